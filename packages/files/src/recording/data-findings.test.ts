import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DriftWatch } from './drift-watch.ts';
import { inOnePiece, readWhole, rulesIn } from './read-whole.ts';
import { wavBytes } from './wav/write-wav.ts';

const rate = 1000;
const wave = (n: number) => 0.5 * Math.sin(n / 6) + 0.01 * Math.sin(n * 2.017);
const text = (value: (n: number) => number, count = 4000, unit = 'g') =>
  new TextEncoder().encode(
    `Time [s],A [${unit}]\n${Array.from({ length: count }, (_, n) => `${(n / rate).toFixed(3)},${value(n).toFixed(6)}`).join('\n')}\n`,
  );
const rules = async (value: (n: number) => number, count?: number, unit?: string) =>
  rulesIn(await readWhole(text(value, count, unit)));

test('a wave breaks none of them', async () => {
  expect(await rules(wave)).toEqual([]);
});

test('one value throughout is a dead channel; so few of them are no finding', async () => {
  expect(await rules(() => 1.25)).toEqual(['values-move']);
  expect(await rules(() => 1.25, 40)).toEqual([]);
});

test('a stretch filled with zeros or with the last value stands still; one of a slow switch does not', async () => {
  expect(await rules((n) => (n >= 700 && n < 1100 ? 0 : wave(n)))).toEqual(['no-standstill']);
  expect(await rules((n) => (n >= 700 && n < 1100 ? wave(700) : wave(n)))).toEqual(['no-standstill']);
  expect(await rules((n) => Math.floor(n / 200) % 2)).not.toContain('no-standstill');
});

test('an acceleration that falls to its rest is not settled; a voltage that does may be a supply coming on', async () => {
  const settling = (n: number) => 0.05 * wave(n) + 30 * Math.exp(-n / 700);
  expect(await rules(settling)).toEqual(['settled']);
  expect(await rules(settling, 4000, 'V')).toEqual([]);
});

test('law: a ramp, a slow wave and noise are no settling', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('ramp', 'wave', 'noise'),
      fc.integer({ min: 1, max: 1 << 20 }),
      fc.double({ min: 0.5, max: 3, noNaN: true }),
      (kind, seed, turns) => {
        const watch = new DriftWatch();
        let state = seed;
        const noise = () => {
          state = (Math.imul(state, 1_103_515_245) + 12_345) >>> 0;
          return state / 2 ** 32 - 0.5;
        };
        for (let n = 0; n < 20_000; n++) {
          const along = n / 20_000;
          const slow = kind === 'ramp' ? along : kind === 'wave' ? Math.sin(2 * Math.PI * turns * along) : 0;
          watch.see(slow + 0.05 * noise());
        }
        expect(watch.drift()).toBeUndefined();
      },
    ),
    { numRuns: 60 },
  );
});

test('law: an exponential is found with its constant within a twentieth, whatever its length', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 5000, max: 60_000 }),
      fc.double({ min: 1.5, max: 5, noNaN: true }),
      (count, falls) => {
        const watch = new DriftWatch();
        const constant = count / falls;
        for (let n = 0; n < count; n++) watch.see(100 * Math.exp(-n / constant) + Math.sin(n));
        expect(watch.drift()!.constant / constant).toBeCloseTo(1, 0);
        expect(Math.abs(watch.drift()!.constant / constant - 1)).toBeLessThan(0.05);
      },
    ),
    { numRuns: 60 },
  );
});

const wav = (value: (n: number) => number) =>
  inOnePiece(wavBytes({ channels: [Float64Array.from({ length: 4000 }, (_, n) => value(n))], rate, form: 'int16' }));

test('integers of 16 bits with their bytes exchanged are asked about; in their order, and as noise, they are not', async () => {
  const right = wav(wave);
  const data = right.length - 8000;
  const wrong = right.slice();
  for (let at = data; at < wrong.length; at += 2) [wrong[at], wrong[at + 1]] = [wrong[at + 1]!, wrong[at]!];
  expect(rulesIn(await readWhole(wrong))).toContain('bytes-in-order');
  expect(rulesIn(await readWhole(right))).toEqual([]);
  let state = 7;
  const noise = () => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) >>> 0;
    return 0.9 * (state / 2 ** 31 - 1);
  };
  expect(rulesIn(await readWhole(wav(noise)))).toEqual([]);
});

test('shares that reach full scale were cut there', async () => {
  const cut = (n: number) => Math.max(-1, Math.min(1, 3 * wave(n)));
  expect(rulesIn(await readWhole(wav(cut)))).toContain('below-full-scale');
});
