import { Refusal } from './refusal.ts';

/** An exact ratio of whole numbers in lowest terms; the denominator is positive. */
export interface Fraction {
  readonly numerator: bigint;
  readonly denominator: bigint;
}

export function fraction(numerator: bigint | number, denominator: bigint | number = 1n): Fraction {
  const [n, d] = [BigInt(numerator), BigInt(denominator)];
  if (d === 0n) throw new Refusal({ read: `${n}/0`, expected: 'a ratio whose denominator is not zero' });
  const common = greatestCommonDivisor(n, d);
  const sign = d < 0n ? -1n : 1n;
  return { numerator: (sign * n) / common, denominator: (sign * d) / common };
}

export const zero = fraction(0);
export const one = fraction(1);

/** A decimal as the exact fraction it was written as: 0.495 is 99/200. */
export function exactly(value: number): Fraction {
  const text = value.toString();
  const [mantissa, exponent = '0'] = text.split('e');
  const [whole, decimals = ''] = mantissa!.split('.');
  const power = Number(exponent) - decimals.length;
  const digits = BigInt(whole! + decimals);
  return power >= 0 ? fraction(digits * 10n ** BigInt(power)) : fraction(digits, 10n ** BigInt(-power));
}

export function plus(a: Fraction, b: Fraction): Fraction {
  return fraction(a.numerator * b.denominator + b.numerator * a.denominator, a.denominator * b.denominator);
}

export function minus(a: Fraction, b: Fraction): Fraction {
  return plus(a, fraction(-b.numerator, b.denominator));
}

export function multiplied(a: Fraction, b: Fraction): Fraction {
  return fraction(a.numerator * b.numerator, a.denominator * b.denominator);
}

export function divided(a: Fraction, b: Fraction): Fraction {
  return fraction(a.numerator * b.denominator, a.denominator * b.numerator);
}

export function isZero(a: Fraction): boolean {
  return a.numerator === 0n;
}

export function sameFraction(a: Fraction, b: Fraction): boolean {
  return a.numerator === b.numerator && a.denominator === b.denominator;
}

export function toNumber(a: Fraction): number {
  return Number(a.numerator) / Number(a.denominator);
}

/** `1456/15`, `4`. */
export function showFraction(a: Fraction): string {
  return a.denominator === 1n ? a.numerator.toString() : `${a.numerator}/${a.denominator}`;
}

export function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  let [x, y] = [a < 0n ? -a : a, b < 0n ? -b : b];
  while (y !== 0n) [x, y] = [y, x % y];
  return x === 0n ? 1n : x;
}
