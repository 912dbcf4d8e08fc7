import fc from 'fast-check';
import { expect, test } from 'vitest';
import { gravityOfBending, gravityOfTilt } from './formulas/tilt-gravity.ts';
import { transverseError } from './reading-allowances.ts';

test('law: motion across reads worst in step; a quarter turn apart it is the length of the sum of both', () => {
  const share = fc.double({ min: 0, max: 0.2, noNaN: true });
  const cross = fc.double({ min: 0, max: 5, noNaN: true });
  fc.assert(
    fc.property(share, cross, (transverse, motion) => {
      const inStep = transverseError(transverse, motion, 'in step');
      const quarter = transverseError(transverse, motion, 'a quarter turn apart');
      expect(quarter).toBeLessThanOrEqual(inStep);
      expect((1 + quarter) ** 2).toBeCloseTo(1 + inStep ** 2, 12);
      expect(transverseError(transverse, motion)).toBe(inStep);
    }),
  );
});

test('law: the gravity of a bending tower falls with the square of the frequency and with the height', () => {
  const positive = fc.double({ min: 0.05, max: 5, noNaN: true });
  fc.assert(
    fc.property(positive, fc.double({ min: 10, max: 200, noNaN: true }), (frequency, height) => {
      const one = gravityOfBending(frequency, height);
      expect(gravityOfBending(2 * frequency, height) / one).toBeCloseTo(1 / 4, 12);
      expect(gravityOfBending(frequency, 2 * height) / one).toBeCloseTo(1 / 2, 12);
      expect(gravityOfTilt(-0.1)).toBe(-gravityOfTilt(0.1));
    }),
  );
});
