import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Broken } from '../../quantity/index.ts';
import { windowNames } from '../windows/kinds.ts';
import { measured } from './gathering.ts';
import { added, blocksOf, evenNoise, madeTone } from './made-record.ts';
import {
  amplitudesOf,
  bandPower,
  type DensitySettings,
  densityRms,
  densityRmsDeviation,
  type PowerDensity,
  powerDensity,
} from './power-density.ts';

const stored = JSON.parse(
  readFileSync(new URL('../../../../../evidence/scipy/measures.json', import.meta.url), 'utf8'),
);
const settings: DensitySettings = { rate: 1024, length: 256, window: 'hann', overlap: 0.5, detrend: 'none' };

function known(samples: Float64Array, given: Partial<DensitySettings> = {}): PowerDensity {
  const found = measured(powerDensity({ ...settings, ...given }), samples);
  if (!found.known) throw new Error('expected to be known');
  return found.value;
}

test(`independent: densities as scipy ${stored.versions.scipy} gives them, four windows, three overlaps`, () => {
  const { rate, seed, samples, length, densities } = stored.densities;
  const tone = madeTone(samples, 0.1);
  const record = evenNoise(seed, samples).map((x, n) => x + 0.5 + tone[n]!);
  expect(densities).toHaveLength(12);
  for (const { window, overlap, detrend, density } of densities) {
    const found = known(record, { rate, length, window, overlap, detrend });
    for (let k = 0; k <= length / 2; k++) {
      const error = Math.abs(found.density[k]! - density[k]);
      expect(error, `${window} line ${k}`).toBeLessThan(1e-11 * (density[k] + 1e-4));
    }
  }
});

test('law (Parseval): of one rectangular segment the whole band has the mean square of the record', () => {
  fc.assert(
    fc.property(fc.integer(), (seed) => {
      const record = evenNoise(seed, 256).map((x) => x + 0.3);
      const found = known(record, { window: 'rectangular', overlap: 0 });
      const square = record.reduce((sum, x) => sum + x * x, 0) / 256;
      expect(bandPower(found, 0, 512) / square).toBeCloseTo(1, 11);
    }),
  );
});

test('law: a sine on a line is read with its amplitude through every window, and its mean as the first line', () => {
  for (const window of windowNames) {
    const found = known(
      madeTone(2048, 32 / 256, 2.5, 1).map((x) => x + 4),
      { window },
    );
    const amplitudes = amplitudesOf(found);
    // Far side lobes of the mean reach the line: a ten-thousandth through the windows that are no sums of cosines.
    expect(amplitudes[32], window).toBeCloseTo(2.5, window.startsWith('kaiser') ? 3 : 9);
    expect(amplitudes[0], window).toBeCloseTo(4, window.startsWith('kaiser') ? 3 : 9);
  }
});

test('law: neighbouring bands add up to the whole, wherever the edge cuts', () => {
  const found = known(evenNoise(5, 4096));
  fc.assert(
    fc.property(fc.double({ min: 0, max: 512, noNaN: true }), (edge) => {
      const parts = bandPower(found, 0, edge) + bandPower(found, edge, 512);
      expect(parts / bandPower(found, 0, 512)).toBeCloseTo(1, 11);
    }),
  );
});

test('law: how a record is cut changes nothing', () => {
  const record = evenNoise(9, 5000);
  for (const overlap of [0, 0.5, 0.67, 0.75]) {
    const pieces = powerDensity({ ...settings, overlap });
    for (const block of blocksOf(record, 1, 300, 77, 2048)) pieces.take(block);
    expect(pieces.result()).toEqual(measured(powerDensity({ ...settings, overlap }), record));
  }
});

test('law: white noise has one level, and the stated deviations hold over many records', () => {
  const ratios: number[] = [];
  const bands: number[] = [];
  let [deviation, bandDeviation] = [0, 0];
  for (let seed = 1; seed <= 400; seed++) {
    const found = known(evenNoise(seed * 7919, 2048), { length: 64 });
    ratios.push((found.density[10]! * 512) / (1 / 3));
    bands.push(densityRms(found, 100, 200) / Math.sqrt((100 / 512) * (1 / 3)));
    deviation = 1 / Math.sqrt(found.effectiveAverages);
    bandDeviation = densityRmsDeviation(found, 100, 200);
  }
  const spread = (values: readonly number[]) => {
    const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
    return { mean, deviation: Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / values.length) };
  };
  // 400 records: a standard deviation is known within 3.5 %, so three of them are 11 %.
  expect(spread(ratios).mean).toBeCloseTo(1, 1);
  expect(spread(ratios).deviation / deviation).toBeGreaterThan(0.87);
  expect(spread(ratios).deviation / deviation).toBeLessThan(1.13);
  expect(spread(bands).mean).toBeCloseTo(1, 1);
  expect(spread(bands).deviation / bandDeviation).toBeGreaterThan(0.85);
  expect(spread(bands).deviation / bandDeviation).toBeLessThan(1.15);
});

test('a segment with a sample that is no number is left out and counted; a short record says what it lacks', () => {
  const record = added(madeTone(1024, 0.1), evenNoise(1, 1024));
  record[300] = Number.NaN;
  const found = known(record);
  expect(found.segmentsLeftOut).toBe(2);
  expect(found.segments).toBe(5);
  expect(found.density.every((x) => Number.isFinite(x))).toBe(true);
  expect(measured(powerDensity(settings), new Float64Array(100))).toEqual({
    known: false,
    missing: [{ of: 'the record', what: 'length of at least 256 samples (it has 100)' }],
  });
  expect(measured(powerDensity(settings), new Float64Array(300).fill(Number.NaN)).known).toBe(false);
  expect(known(new Float64Array(300)).samplesLeftOver).toBe(44);
});

test('negative: a length that is no power of two, an overlap of one', () => {
  expect(() => powerDensity({ ...settings, length: 1000 })).toThrow(Broken);
  expect(() => powerDensity({ ...settings, overlap: 1 })).toThrow(Broken);
  expect(() => powerDensity({ ...settings, rate: 0 })).toThrow(Broken);
});
