import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { Broken } from '../../quantity/index.ts';
import { type EnvelopeSettings, envelopeDetector, envelopeSpectrum } from './envelope.ts';
import { envelopeBandChoice } from './envelope-band.ts';
import { measured } from './gathering.ts';
import { added, blocksOf, evenNoise, madeTone } from './made-record.ts';
import { amplitudesOf } from './power-density.ts';

const stored = JSON.parse(
  readFileSync(new URL('../../../../../evidence/scipy/measures.json', import.meta.url), 'utf8'),
).envelope;
const rate = 25_600;

/** A knock every `every` samples that rings at `turns` of the sampling rate. */
function knocks(length: number, every: number, turns: number, loss: number): Float64Array {
  return Float64Array.from({ length }, (_, n) => {
    const since = n % every;
    return Math.exp(-loss * since) * Math.sin(2 * Math.PI * turns * since);
  });
}

test('independent: envelope and its density as scipy demodulates, filters, decimates and averages', () => {
  const record = added(knocks(20_000, 256, 0.15, 0.02), evenNoise(21, 20_000));
  const detector = envelopeDetector(rate, stored.low, stored.high, stored.order);
  expect(detector.every).toBe(stored.every);
  expect(detector.settling).toBe(stored.settling);
  const envelope = detector.through(record);
  expect(envelope).toHaveLength(stored.count);
  for (const [k, value] of stored.first.entries()) expect(envelope[k]).toBeCloseTo(value, 9);
  const { low, high, order, length } = stored;
  const settings: EnvelopeSettings = { rate, low, high, order, length, window: 'hann', overlap: 0.5 };
  const found = measured(envelopeSpectrum(settings), record);
  if (!found.known) throw new Error('expected to be known');
  for (const [k, value] of stored.density.entries()) {
    expect(Math.abs(found.value.spectrum.density[k]! - value)).toBeLessThan(1e-12 + 1e-9 * value);
  }
});

test('law: a carrier that swells by m shows m times its amplitude on the line of the swelling', () => {
  const length = 2 ** 16;
  const carrier = madeTone(length, 0.2, 3);
  const swelling = madeTone(length, 100 / rate, 0.4);
  const settings = {
    rate,
    low: 4120,
    high: 6120,
    order: 4,
    length: 1024,
    window: 'flat-top-hft95',
    overlap: 0.5,
  } as const;
  const found = measured(
    envelopeSpectrum(settings),
    carrier.map((x, n) => x * (1 + swelling[n]!)),
  );
  if (!found.known) throw new Error('expected to be known');
  const { spectrum, moments } = found.value;
  const line = Math.round(100 / spectrum.resolution);
  expect(amplitudesOf(spectrum)[line]).toBeCloseTo(1.2, 2);
  // The envelope is that of a record whose swelling does not end on a whole turn.
  expect(moments.mean).toBeCloseTo(3, 2);
});

test('law: how a record is cut changes nothing', () => {
  const record = evenNoise(4, 12_000);
  const settings = { rate, low: 2000, high: 4000, order: 3, length: 256, window: 'hann', overlap: 0.5 } as const;
  const pieces = envelopeSpectrum(settings);
  for (const block of blocksOf(record, 1, 5, 700, 64)) pieces.take(block);
  expect(pieces.result()).toEqual(measured(envelopeSpectrum(settings), record));
});

test('a record too short says how long it would have to be; a band beyond half the rate is refused', () => {
  const settings = { rate, low: 2000, high: 4000, order: 3, length: 256, window: 'hann', overlap: 0.5 } as const;
  const found = measured(envelopeSpectrum(settings), new Float64Array(500));
  expect(found.known).toBe(false);
  expect(JSON.stringify(found)).toContain('(it has 500)');
  expect(() => envelopeDetector(rate, 10_000, 14_000, 2)).toThrow(Broken);
});

test('law: the band that is chosen holds the ring of the knocks, and its kurtosis is that of the record cut by hand', () => {
  const length = 80_000;
  const hum = madeTone(length, 0.01, 40);
  const record = added(
    hum,
    knocks(length, 1600, 0.3, 0.05),
    evenNoise(8, length).map((x) => 0.2 * x),
  );
  const choice = envelopeBandChoice({ rate, from: 500, to: rate / 2, leastWidth: 600 });
  for (const block of blocksOf(record, 999, 4096)) choice.take(block);
  const found = choice.result();
  if (!found.known || !found.value.chosen.known) throw new Error('expected to be known');
  const band = found.value.chosen.value;
  expect(band.low).toBeLessThanOrEqual(0.3 * rate);
  expect(band.high).toBeGreaterThanOrEqual(0.3 * rate);
  expect(band.high - band.low).toBeLessThanOrEqual(3200);
  expect(found.value.reason).toContain('most impulsive');
  expect(found).toEqual(measured(envelopeBandChoice({ rate, from: 500, to: rate / 2, leastWidth: 600 }), record));
});

test('independent: kurtosis and rms of one band as numpy cuts them out of the transform', () => {
  const record = added(knocks(32_768, 1600, 0.3, 0.05), evenNoise(8, 32_768));
  const found = measured(envelopeBandChoice({ rate, from: 6400, to: 9600, leastWidth: 3000 }), record);
  if (!found.known) throw new Error('expected to be known');
  const band = found.value.tried.find(({ low, high }) => low === 6400 && high === 9600)!;
  expect(band.kurtosis).toBeCloseTo(stored.band.kurtosis, 9);
  expect(band.rms).toBeCloseTo(stored.band.rms, 9);
});

test('negative: of noise no band is chosen, in a hundred records', () => {
  let chosen = 0;
  for (let seed = 1; seed <= 100; seed++) {
    const found = measured(
      envelopeBandChoice({ rate, from: 500, to: rate / 2, leastWidth: 1600 }),
      gaussian(seed, 33_000),
    );
    if (!found.known) throw new Error('expected to be known');
    if (found.value.chosen.known) chosen++;
    else expect(found.value.reason).toContain('noise');
  }
  expect(chosen).toBeLessThanOrEqual(1);
});

/** The sum of twelve even numbers. */
function gaussian(seed: number, length: number): Float64Array {
  const even = evenNoise(seed * 977, 12 * length);
  return Float64Array.from({ length }, (_, n) => {
    let sum = 0;
    for (let k = 0; k < 12; k++) sum += even[12 * n + k]!;
    return sum;
  });
}
