import fc from 'fast-check';
import { expect, test } from 'vitest';
import { humanErrors, recognised } from './human-errors.ts';

test('law: every ratio, off by no more than its spread, is recognised, nearest first, both ways round', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...humanErrors),
      fc.double({ min: 0.001, max: 0.2, noNaN: true }),
      fc.double({ min: -1, max: 1, noNaN: true }),
      (error, spread, share) => {
        const found = error.ratio * Math.exp(share * 0.999 * Math.log1p(spread));
        const { candidates } = recognised(found, spread);
        expect(candidates).toContain(error);
        const distances = candidates.map(({ ratio }) => Math.abs(Math.log(found / ratio)));
        expect(distances).toEqual([...distances].sort((a, b) => a - b));
        expect(humanErrors.some(({ ratio }) => Math.abs(ratio * error.ratio - 1) < 1e-12)).toBe(true);
      },
    ),
  );
});

test('law: a ratio of one within its spread is no error of scale', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.001, max: 0.2, noNaN: true }),
      fc.double({ min: -1, max: 1, noNaN: true }),
      (spread, share) => {
        expect(recognised(Math.exp(share * 0.999 * Math.log1p(spread)), spread).none).toBe(true);
      },
    ),
  );
  expect(recognised(1.3, 0.05)).toEqual({ candidates: [], none: false });
});
