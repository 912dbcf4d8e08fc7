import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  coverageFactor,
  degreesOfFreedomFromReliability,
  probabilityOutside,
  wholeDegreesOfFreedom,
} from './coverage.ts';
import { complementaryError, incompleteBeta, logGamma } from './incomplete-beta.ts';

const answers = JSON.parse(
  readFileSync(new URL('../../../../evidence/scipy/uncertainty.json', import.meta.url), 'utf8'),
);

// JCGM 100:2008, table G.2 and examples (second-hand: public test files that quote it).
test.each([
  { level: 0.95, degrees: 16, printed: '2.12' },
  { level: 0.9545, degrees: 16, printed: '2.17' },
  { level: 0.99, degrees: 16, printed: '2.92' },
  { level: 0.9545, degrees: 'infinite' as const, printed: '2.00' },
  { level: 0.95, degrees: 5, printed: '2.571' },
])('printed: coverage factor of $level at $degrees degrees of freedom is $printed', ({ level, degrees, printed }) => {
  const decimals = printed.split('.')[1]!.length;
  expect(coverageFactor(level, degrees).toFixed(decimals)).toBe(printed);
});

// JCGM 100:2008, G.4.2 (second-hand).
test.each([
  [0.25, '8'],
  [0.1, '50'],
  [0.5, '2'],
])('printed: a standard uncertainty known to %s has %s degrees of freedom', (reliability, printed) => {
  expect((degreesOfFreedomFromReliability(reliability) as number).toFixed(0)).toBe(printed);
});

test("independent: Student's t quantiles agree with scipy to 1e-9, whole degrees of freedom or not", () => {
  for (const { level, degrees, factor } of answers.coverageFactors) {
    expect(coverageFactor(level, degrees) / factor, `${level} at ${degrees}`).toBeCloseTo(1, 9);
  }
});

test('independent: normal quantiles agree with scipy to 1e-12', () => {
  for (const { level, factor } of answers.normalFactors) {
    expect(Math.abs(coverageFactor(level, 'infinite') / factor - 1), `${level}`).toBeLessThan(1e-12);
  }
});

test('independent: incomplete beta, erfc and ln gamma agree with scipy', () => {
  for (const { x, a, b, value } of answers.incompleteBeta) {
    expect(Math.abs(incompleteBeta(x, a, b) - value), `I_${x}(${a}, ${b})`).toBeLessThan(1e-12 + 1e-11 * value);
  }
  for (const { x, value } of answers.complementaryError) {
    expect(Math.abs(complementaryError(x) / value - 1), `erfc(${x})`).toBeLessThan(1e-12);
  }
  for (const { x, value } of answers.logGamma) {
    expect(Math.abs(logGamma(x) - value), `ln gamma(${x})`).toBeLessThan(1e-13 * (1 + Math.abs(value)));
  }
});

test('law: the coverage factor undoes the probability outside it', () => {
  const degrees = fc.oneof(fc.constant('infinite' as const), fc.double({ min: 1, max: 500, noNaN: true }));
  fc.assert(
    fc.property(fc.double({ min: 0.01, max: 0.9999, noNaN: true }), degrees, (level, nu) => {
      expect(probabilityOutside(coverageFactor(level, nu), nu)).toBeCloseTo(1 - level, 10);
    }),
  );
});

test('law: more degrees of freedom never need a larger factor, and none needs less than the normal', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 1e5, noNaN: true }),
      fc.double({ min: 1, max: 10, noNaN: true }),
      (nu, more) => {
        expect(coverageFactor(0.95, nu)).toBeGreaterThanOrEqual(coverageFactor(0.95, nu * more) - 1e-9);
        expect(coverageFactor(0.95, nu)).toBeGreaterThanOrEqual(coverageFactor(0.95, 'infinite') - 1e-9);
      },
    ),
  );
});

test('degrees of freedom are cut to the next lower whole number, and what is nearly whole is whole', () => {
  expect(wholeDegreesOfFreedom(16.74)).toBe(16);
  expect(wholeDegreesOfFreedom(16.999_999_999_99)).toBe(17);
  expect(wholeDegreesOfFreedom('infinite')).toBe('infinite');
});

test('a level in percent and impossible degrees of freedom are refused', () => {
  expect(() => coverageFactor(95, 10)).toThrow('For 95 % write 0.95.');
  expect(() => coverageFactor(0, 10)).toThrow('level of confidence');
  expect(() => coverageFactor(Number.NaN, 10)).toThrow('level of confidence');
  expect(() => coverageFactor(0.95, 0)).toThrow('1 or more');
  expect(() => coverageFactor(0.95, Number.POSITIVE_INFINITY)).toThrow("or 'infinite'");
  expect(() => degreesOfFreedomFromReliability(25)).toThrow('to 0.7');
});
