import { expect, test } from 'vitest';
import { answer, level } from '../quantity/index.ts';
import { loopCheckpoints } from './loop-checkpoints.ts';

const scale = answer({ low: level('velocity', 0, 'rms'), high: level('velocity', 0.025, 'rms') });
const card = answer({ currentAtLow: 0.004, currentAtHigh: 0.02, countsAtLow: 0, countsAtHigh: 32_000 });

test('five currents of 0 to 25 mm/s are a quarter of the range and of 32000 counts apart (worked by hand)', () => {
  const points = loopCheckpoints(scale, card);
  const worked = [0, 0.00625, 0.0125, 0.01875, 0.025];
  expect(points).toHaveLength(worked.length);
  for (const [at, { level }] of points.entries()) {
    expect(level.known && level.value.value).toBeCloseTo(worked[at]!, 12);
  }
  expect(points.map((each) => each.counts?.known && each.counts.value)).toEqual([0, 8_000, 16_000, 24_000, 32_000]);
});

test('negative: an unknown range leaves the levels unknown and the counts known', () => {
  const points = loopCheckpoints({ known: false, missing: [{ of: 'LPV-25', what: 'range' }] }, card);
  expect(points.every((each) => !each.level.known && each.counts?.known)).toBe(true);
});
