import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { measured } from './gathering.ts';
import { blocksOf, evenNoise, madeTone } from './made-record.ts';
import { type Moments, moments } from './moments.ts';

const stored = JSON.parse(
  readFileSync(new URL('../../../../../evidence/scipy/measures.json', import.meta.url), 'utf8'),
);

function known(samples: Float64Array): Moments {
  const found = measured(moments(), samples);
  if (!found.known) throw new Error('expected to be known');
  return found.value;
}

const shapeOf = ({ crest, skewness, kurtosis }: Moments) =>
  [crest, skewness, kurtosis].map((each) => (each.known ? each.value : Number.NaN));

test(`independent: moments beside a large direct component, as scipy ${stored.versions.scipy} gives them`, () => {
  const { seed, mean, rms, acRms, least, greatest, skewness, kurtosis } = stored.moments;
  const tone = madeTone(10_000, 0.0123);
  const found = known(evenNoise(seed, 10_000).map((x, n) => 1000 + x ** 3 + 0.25 * tone[n]!));
  expect(found.mean).toBeCloseTo(mean, 10);
  expect(found.rms).toBeCloseTo(rms, 10);
  expect(found.acRms).toBeCloseTo(acRms, 11);
  expect(found.least).toBeCloseTo(least, 12);
  expect(found.greatest).toBeCloseTo(greatest, 12);
  expect(found.peakToPeak).toBeCloseTo(greatest - least, 12);
  expect(shapeOf(found)[1]).toBeCloseTo(skewness, 9);
  expect(shapeOf(found)[2]).toBeCloseTo(kurtosis, 9);
});

test('law: a sine of whole periods has crest √2, kurtosis 1.5, no skewness, whatever stands below it', () => {
  const found = known(madeTone(4000, 0.01, 3, 0).map((x) => x + 1e6));
  const [crest, skewness, kurtosis] = shapeOf(found);
  expect(crest).toBeCloseTo(Math.SQRT2, 8);
  expect(kurtosis).toBeCloseTo(1.5, 8);
  expect(skewness).toBeCloseTo(0, 8);
  expect(found.peak).toBeCloseTo(3, 8);
  expect(found.acRms).toBeCloseTo(3 * Math.SQRT1_2, 8);
});

test('law: how a record is cut changes nothing, and a factor scales what has a unit and nothing else', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 3000 }), fc.integer({ min: 2, max: 5000 }), (cut, length) => {
      const record = evenNoise(cut, length);
      const pieces = moments();
      for (const block of blocksOf(record, cut, 1, 1024)) {
        pieces.take(block);
        pieces.result();
      }
      expect(pieces.result()).toEqual(measured(moments(), record));
      const once = known(record);
      const scaled = known(record.map((x) => -4 * x));
      expect(scaled.acRms / once.acRms).toBeCloseTo(4, 10);
      expect(scaled.mean).toBeCloseTo(-4 * once.mean, 10);
      expect(shapeOf(scaled)[2]).toBeCloseTo(shapeOf(once)[2]!, 8);
      expect(shapeOf(scaled)[1]).toBeCloseTo(-shapeOf(once)[1]!, 8);
    }),
    { numRuns: 40 },
  );
});

test('what is no number is counted and left out; a record that stands still has no crest', () => {
  const found = known(Float64Array.of(1, Number.NaN, 3, Number.POSITIVE_INFINITY, Number.NaN, 2));
  expect(found).toMatchObject({ samples: 3, notNumbers: 2, infinite: 1, firstBad: 1, mean: 2, least: 1, greatest: 3 });
  const still = known(new Float64Array(5000).fill(0.1));
  expect(still).toMatchObject({ acRms: 0, peakToPeak: 0, mean: 0.1 });
  expect(still.kurtosis).toEqual({
    known: false,
    missing: [{ of: 'the record', what: 'sample that differs from the others' }],
  });
  expect(measured(moments(), Float64Array.of(Number.NaN)).known).toBe(false);
  expect(measured(moments(), new Float64Array(0)).known).toBe(false);
});
