import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  divided,
  exactly,
  fraction,
  greatestCommonDivisor,
  isZero,
  minus,
  multiplied,
  one,
  plus,
  sameFraction,
  showFraction,
  toNumber,
  zero,
} from './fraction.ts';
import { Refusal } from './refusal.ts';

const part = fc.integer({ min: -5000, max: 5000 });
const any = fc
  .tuple(
    part,
    part.filter((each) => each !== 0),
  )
  .map(([n, d]) => fraction(n, d));

test('law: fractions form a field', () => {
  fc.assert(
    fc.property(any, any, any, (a, b, c) => {
      expect(sameFraction(plus(a, b), plus(b, a))).toBe(true);
      expect(sameFraction(multiplied(a, plus(b, c)), plus(multiplied(a, b), multiplied(a, c)))).toBe(true);
      expect(isZero(minus(a, a))).toBe(true);
      expect(sameFraction(plus(a, zero), a)).toBe(true);
      expect(sameFraction(multiplied(a, one), a)).toBe(true);
      if (!isZero(b)) expect(sameFraction(multiplied(divided(a, b), b), a)).toBe(true);
    }),
  );
});

test('law: lowest terms, positive denominator, and the number it stands for', () => {
  fc.assert(
    fc.property(any, (a) => {
      expect(a.denominator > 0n).toBe(true);
      expect(greatestCommonDivisor(a.numerator, a.denominator)).toBe(isZero(a) ? a.denominator : 1n);
      expect(toNumber(a)).toBeCloseTo(Number(a.numerator) / Number(a.denominator), 12);
    }),
  );
});

test('law: a decimal is the fraction it was written as', () => {
  expect(showFraction(exactly(0.495))).toBe('99/200');
  expect(showFraction(exactly(1e-7))).toBe('1/10000000');
  expect(showFraction(exactly(-0.5))).toBe('-1/2');
  expect(showFraction(exactly(1e21))).toBe('1000000000000000000000');
  fc.assert(
    fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), (value) => {
      expect(toNumber(exactly(value))).toBeCloseTo(value, 6);
    }),
  );
});

test('law: a ratio of tooth counts is shown in lowest terms, never as a decimal', () => {
  const stage = multiplied(fraction(82, 23), fraction(88, 22));
  expect(showFraction(fraction(2912, 30))).toBe('1456/15');
  expect(showFraction(stage)).toBe('328/23');
  expect(showFraction(fraction(8, -2))).toBe('-4');
});

test('negative: nothing divided by zero', () => {
  expect(() => fraction(1, 0)).toThrow(Refusal);
  expect(() => divided(one, zero)).toThrow(Refusal);
});
