import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { decayAfter, decayOfTaps } from './decay.ts';
import { measured } from './gathering.ts';
import { blocksOf, evenNoise } from './made-record.ts';
import { type Tap, type TapSettings, type TapsFound, taps } from './taps.ts';

const stored = JSON.parse(
  readFileSync(new URL('../../../../../evidence/scipy/measures.json', import.meta.url), 'utf8'),
).decay;
const rate = 51_200;
const settings: TapSettings = { rate, from: 500, factor: 10, duration: 0.02 };

/** Taps every 0.2 s, each a ring-down of `frequency` and `damping`, in noise, on a bias of 11.5. */
function tapped(
  count: number,
  frequency: number,
  damping: number,
  sign: number,
  noise: number,
  seed = 1,
): Float64Array {
  const even = evenNoise(seed, Math.round((0.2 * count + 0.08) * rate));
  return even.map((x, n) => {
    const t = n / rate - 0.1;
    const since = t < 0 ? -1 : t % 0.2;
    const loss = 2 * Math.PI * frequency * damping;
    const turn = 2 * Math.PI * frequency * Math.sqrt(1 - damping * damping);
    const ring = since < 0 ? 0 : sign * Math.exp(-loss * since) * Math.sin(turn * since);
    return 11.5 + ring + noise * x;
  });
}

function found(samples: Float64Array, given = settings): TapsFound {
  const all = measured(taps(given), samples);
  if (!all.known) throw new Error(JSON.stringify(all.missing));
  return all.value;
}

test('law: every tap is found where it was given, with the side it went first', () => {
  for (const sign of [1, -1]) {
    const all = found(tapped(5, 4000, 0.02, sign, 0.01));
    expect(all.taps).toHaveLength(5);
    for (const [k, tap] of all.taps.entries()) {
      expect(tap.at + tap.onset / rate).toBeCloseTo(0.1 + 0.2 * k, 3);
      expect(tap.polarity).toBe(sign > 0 ? 'positive' : 'negative');
      expect(tap.peak).toBeGreaterThan(0.85);
      expect(tap.peak).toBeLessThan(1.05);
    }
  }
});

test('law: how a record is cut changes nothing', () => {
  const record = tapped(3, 3000, 0.03, 1, 0.02);
  const pieces = taps(settings);
  for (const block of blocksOf(record, 1, 4000, 77)) pieces.take(block);
  expect(pieces.result()).toEqual({ known: true, value: found(record) });
});

test('law: frequency and damping come back, from soft to hard damping', () => {
  for (const [frequency, damping] of [
    [2500, 0.01],
    [8000, 0.02],
    [16_000, 0.03],
    [4000, 0.08],
  ] as const) {
    for (const tap of found(tapped(3, frequency, damping, 1, 1e-4)).taps) {
      const decay = decayAfter(tap, rate, 1000, 24_000);
      if (!decay.known) throw new Error(JSON.stringify(decay.missing));
      expect(decay.value.frequency / frequency).toBeCloseTo(1, 3);
      expect(decay.value.damping / damping).toBeCloseTo(1, 1);
      expect(decay.value.explained).toBeGreaterThan(0.99);
      const tops = decay.value.decrementDamping;
      if (tops.known) expect(Math.abs(tops.value / damping - 1)).toBeLessThan(0.12);
    }
  }
});

test('independent: the ring-down that scipy fits to the same samples, without our filter', () => {
  const { from, ring } = stored;
  const samples = Float64Array.from(ring as number[]);
  const tap: Tap = { at: 0, samples, onset: from, polarity: 'positive', peak: 1, quiet: 1e-4 };
  const decay = decayAfter(tap, stored.rate, 1000, 20_000);
  if (!decay.known) throw new Error(JSON.stringify(decay.missing));
  expect(decay.value.frequency / stored.frequency).toBeCloseTo(1, 4);
  expect(decay.value.damping / stored.damping).toBeCloseTo(1, 2);
});

test('law: the 95 % interval over several taps holds what was put in about 95 times in a hundred', () => {
  let [frequencyHeld, dampingHeld] = [0, 0];
  const runs = 100;
  for (let seed = 1; seed <= runs; seed++) {
    const decays = found(tapped(5, 5000, 0.02, 1, 0.02, seed * 7717)).taps.map((tap) =>
      decayAfter(tap, rate, 1000, 24_000),
    );
    const all = decayOfTaps(decays.map((each) => (each.known ? each.value : undefined!)).filter(Boolean));
    if (!all.known) throw new Error(JSON.stringify(all.missing));
    const inside = ([low, high]: readonly [number, number], value: number) => low <= value && value <= high;
    if (inside(all.value.frequencyInterval, 5000)) frequencyHeld++;
    if (inside(all.value.dampingInterval, 0.02)) dampingHeld++;
  }
  // Of 100 runs at 95 % fewer than 89 happen once in a hundred.
  expect(frequencyHeld).toBeGreaterThanOrEqual(89);
  expect(dampingHeld).toBeGreaterThanOrEqual(89);
});

test('negative: noise alone has no tap, a tap cut off and too few taps say what is needed', () => {
  const quiet = measured(taps(settings), evenNoise(3, 100_000));
  expect(JSON.stringify(quiet)).toContain('nothing reaches 10 times');
  const cut = tapped(1, 4000, 0.02, 1, 0.01).slice(0, Math.round(0.105 * rate));
  expect(JSON.stringify(measured(taps(settings), cut))).toContain('it ends before');
  expect(JSON.stringify(decayOfTaps([]))).toContain('at least three taps');
  const dead: Tap = { at: 0, samples: new Float64Array(500), onset: 64, polarity: 'positive', peak: 0, quiet: 0 };
  expect(decayAfter(dead, rate, 1000, 20_000).known).toBe(false);
});
