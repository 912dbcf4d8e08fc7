import fc from 'fast-check';
import { expect, test } from 'vitest';
import { measured } from './gathering.ts';
import { blocksOf, evenNoise, madeTone } from './made-record.ts';
import { type ValuesHistogram, valuesHistogram } from './values-histogram.ts';

function known(samples: Float64Array, rate = 1): ValuesHistogram {
  const found = measured(valuesHistogram(rate), samples);
  if (!found.known) throw new Error('expected to be known');
  return found.value;
}

test('law: a sine cut at a rail rests on it, for the time its top is above the rail', () => {
  const found = known(madeTone(100_000, 0.0005).map((x) => Math.min(x, 0.5)));
  // cos > ½ for a third of each turn.
  expect(found.highRail.value).toBe(0.5);
  expect(found.highRail.share).toBeCloseTo(1 / 3, 3);
  expect(found.highRail.longestRest).toBeGreaterThan(660);
  expect(found.highRail.rests).toBe(51);
  expect(found.longestFlatRun).toBe(found.highRail.longestRest);
  expect(found.flatRunValue).toBe(0.5);
  expect(found.lowRail.longestRest).toBeLessThan(10);
  expect(found.shareNearGreatest).toBeCloseTo(1 / 3, 1);
});

test('law: counts, runs and cells are those of a record looked at whole, however it is cut', () => {
  const whole = fc.array(fc.integer({ min: -6, max: 6 }), { minLength: 4, maxLength: 400 });
  fc.assert(
    fc.property(whole, fc.integer({ min: 1, max: 50 }), (values, cut) => {
      const record = Float64Array.from(values, (x) => x / 8);
      const pieces = valuesHistogram(2);
      for (const block of blocksOf(record, cut, 1)) pieces.take(block);
      expect(pieces.result()).toEqual(measured(valuesHistogram(2), record));
      const found = known(record, 2);
      const greatest = Math.max(...record);
      expect(found.highRail).toMatchObject({ value: greatest, samples: record.filter((x) => x === greatest).length });
      expect(found.least).toBe(Math.min(...record));
      expect(found.cells.counts.reduce((sum, n) => sum + n, 0)).toBe(record.length);
      let [run, longest] = [0, 0];
      for (const [n, x] of record.entries()) {
        run = n > 0 && x === record[n - 1] ? run + 1 : 1;
        longest = Math.max(longest, run);
      }
      expect(found.longestFlatRun).toBe(longest);
      const rises = [...record.keys()].slice(1).map((n) => (record[n]! - record[n - 1]!) * 2);
      expect(found.rising.greatest).toBe(Math.max(0, ...rises));
      expect(found.falling.greatest).toBe(Math.max(0, ...rises.map((x) => -x)));
    }),
  );
});

test('law: the step of a converter is found, behind a factor and an offset and in single precision', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-6, max: 1e3, noNaN: true }),
      fc.double({ min: -100, max: 100, noNaN: true }),
      fc.integer(),
      (step, offset, seed) => {
        const counts = evenNoise(seed, 3000).map((x) => Math.round(1000 * x));
        const found = known(counts.map((x) => (x + Math.round(offset)) * step)).step;
        expect(found.known && found.value.step / step).toBeCloseTo(1, 8);
        const single = known(counts.map((x) => Math.fround(x * step))).step;
        expect(single.known && single.value.step / step).toBeCloseTo(1, 4);
      },
    ),
    { numRuns: 60 },
  );
});

test('negative: noise that was never quantised has no step', () => {
  const smooth = known(evenNoise(3, 5000).map((x) => Math.sin(x))).step;
  expect(smooth.known).toBe(false);
  expect(known(Float64Array.of(1, 2, 1, 2)).step.known).toBe(false);
});

test('law: a triangle changes at its greatest rate nearly always, a sine seldom', () => {
  const triangle = Float64Array.from({ length: 20_000 }, (_, n) => Math.abs(((n / 200) % 2) - 1));
  const found = known(triangle, 1000);
  expect(found.rising.greatest).toBeCloseTo(5, 6);
  expect(found.falling.greatest).toBeCloseTo(5, 6);
  expect(found.rising.shareNearGreatest).toBeGreaterThan(0.98);
  // |sin| > 0.9 for 2·arccos(0.9)/π = 28.7 % of the time.
  expect(known(madeTone(100_000, 0.001)).rising.shareNearGreatest).toBeCloseTo(0.287, 1);
});

test('what is no number parts a run and is counted; too short a record says so', () => {
  const found = known(Float64Array.of(1, 1, Number.NaN, 1, 1, 0));
  expect(found).toMatchObject({ samples: 5, notFinite: 1, longestFlatRun: 2 });
  expect(found.highRail).toMatchObject({ samples: 4, rests: 2, longestRest: 2, meanRest: 2 });
  expect(measured(valuesHistogram(1), Float64Array.of(1)).known).toBe(false);
  expect(measured(valuesHistogram(1), Float64Array.of(Number.NaN)).known).toBe(false);
  expect(known(new Float64Array(10).fill(3))).toMatchObject({ longestFlatRun: 10, shareNearGreatest: 1 });
});
