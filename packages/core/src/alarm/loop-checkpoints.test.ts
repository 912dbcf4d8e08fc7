import { expect, test } from 'vitest';
import { answer, level } from '../quantity/index.ts';
import { loopCheckpoints } from './loop-checkpoints.ts';

const scale = answer({ low: level('velocity', 0, 'rms'), high: level('velocity', 0.025, 'rms') });
const card = answer({ currentAtLow: 0.004, currentAtHigh: 0.02, countsAtLow: 0, countsAtHigh: 32_000 });

test('4, 12 and 20 mA of 0 to 25 mm/s are 0, 12.5 and 25 mm/s, and 0, 16000 and 32000 counts (worked by hand)', () => {
  const points = loopCheckpoints(scale, card);
  expect(points.map((each) => each.level.known && each.level.value.value)).toEqual([0, 0.0125, 0.025]);
  expect(points.map((each) => each.counts?.known && each.counts.value)).toEqual([0, 16_000, 32_000]);
});

test('negative: an unknown range leaves the levels unknown and the counts known', () => {
  const points = loopCheckpoints({ known: false, missing: [{ of: 'LPV-25', what: 'range' }] }, card);
  expect(points.every((each) => !each.level.known && each.counts?.known)).toBe(true);
});
