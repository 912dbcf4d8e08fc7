import fc from 'fast-check';
import { expect, test } from 'vitest';
import { budget } from './budget.ts';
import { type Contribution, contribution } from './contribution.ts';
import {
  exactly,
  type Uncertain,
  uncertain,
  uncertainDifference,
  uncertainNegative,
  uncertainPower,
  uncertainProduct,
  uncertainQuotient,
  uncertainSquareRoot,
  uncertainSum,
} from './uncertain.ts';

const uncertaintyOf = (quantity: Uncertain) => budget(quantity, { coverage: { factor: 2 } }).standardUncertainty;
const size = fc.double({ min: 0.01, max: 1000, noNaN: true });
const input = fc
  .record({ value: size, standardUncertainty: size })
  .map((each): Contribution => contribution({ name: 'x', ...each }));

test('law: x − x has no uncertainty, and x/x is 1 without any', () => {
  fc.assert(
    fc.property(input, (x) => {
      const same = uncertain(x);
      expect(uncertaintyOf(uncertainDifference(same, uncertain(x)))).toBe(0);
      const one = uncertainQuotient(same, same);
      expect(one.estimate).toBe(1);
      expect(uncertaintyOf(one)).toBeLessThan(1e-12 * (x.standardUncertainty / x.estimate));
    }),
  );
});

test('negative: two inputs that merely look alike do not cancel', () => {
  const [a, b] = [1, 2].map(() => uncertain(contribution({ name: 'x', value: 5, standardUncertainty: 3 })));
  expect(uncertaintyOf(uncertainDifference(a!, b!))).toBeCloseTo(3 * Math.SQRT2, 12);
});

test('law: u(2x) = 2u(x), u(−x) = u(x), u(x + c) = u(x)', () => {
  fc.assert(
    fc.property(input, size, (x, c) => {
      const u = x.standardUncertainty;
      expect(uncertaintyOf(uncertainSum(uncertain(x), uncertain(x))) / (2 * u)).toBeCloseTo(1, 12);
      expect(uncertaintyOf(uncertainProduct(exactly(2), uncertain(x))) / (2 * u)).toBeCloseTo(1, 12);
      expect(uncertaintyOf(uncertainNegative(uncertain(x)))).toBe(u);
      expect(uncertaintyOf(uncertainSum(uncertain(x), exactly(c)))).toBe(u);
    }),
  );
});

test('law: relative uncertainties of a product of independent inputs add as squares; a power multiplies them', () => {
  fc.assert(
    fc.property(input, input, (x, y) => {
      const relative = (q: Uncertain) => uncertaintyOf(q) / q.estimate;
      const [ofX, ofY] = [relative(uncertain(x)), relative(uncertain(y))];
      expect(relative(uncertainProduct(uncertain(x), uncertain(y))) / Math.hypot(ofX, ofY)).toBeCloseTo(1, 10);
      expect(relative(uncertainQuotient(uncertain(x), uncertain(y))) / Math.hypot(ofX, ofY)).toBeCloseTo(1, 10);
      expect(relative(uncertainPower(uncertain(x), 3)) / (3 * ofX)).toBeCloseTo(1, 10);
      expect(relative(uncertainSquareRoot(uncertain(x))) / (0.5 * ofX)).toBeCloseTo(1, 10);
    }),
  );
});

test('law: what two results share cancels: (a + s) − (b + s) does not depend on s', () => {
  fc.assert(
    fc.property(input, input, input, (a, b, s) => {
      const left = uncertainSum(uncertain(a), uncertain(s));
      const right = uncertainSum(uncertain(b), uncertain(s));
      const expected = Math.hypot(a.standardUncertainty, b.standardUncertainty);
      expect(uncertaintyOf(uncertainDifference(left, right)) / expected).toBeCloseTo(1, 9);
    }),
  );
});

test('refused: no value or no slope at the estimate, unless nothing uncertain stands there', () => {
  const zero = contribution({ name: 'x', value: 0, standardUncertainty: 1 });
  expect(() => uncertainQuotient(exactly(1), uncertain(zero))).toThrow('finite value');
  expect(() => uncertainSquareRoot(uncertain(zero))).toThrow('slope');
  const nothing = uncertainDifference(uncertain(zero), uncertain(zero));
  expect(uncertainSquareRoot(nothing).estimate).toBe(0);
});
