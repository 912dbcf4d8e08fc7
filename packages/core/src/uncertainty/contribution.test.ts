import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type ContributionStatement, contribution, meanAndDeviation } from './contribution.ts';

// JCGM 100:2008, 4.4.3 (mean, s, s/√n: second-hand; the twenty readings themselves: from memory).
test('printed: mean 100.145, s 1.489 and s of the mean 0.333 of twenty temperatures', () => {
  const readings = [
    96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95, 101.11, 101.2,
    101.57, 101.84, 102.36, 102.72,
  ];
  const mean = contribution({ name: 't', readings });
  expect(mean.estimate.toFixed(3)).toBe('100.145');
  expect(meanAndDeviation(readings).deviation.toFixed(3)).toBe('1.489');
  expect(mean.standardUncertainty.toFixed(3)).toBe('0.333');
  expect(mean.degreesOfFreedom).toBe(19);
});

// JCGM 100:2008, 4.3 and H.1 (second-hand).
test.each<{ printed: string; statement: Omit<ContributionStatement, 'name'> }>([
  { printed: '0.35', statement: { halfWidth: 0.5, distribution: 'u-shaped' } },
  { printed: '1.2', statement: { halfWidth: 2, distribution: 'rectangular' } },
  { printed: '0.58', statement: { halfWidth: 1, distribution: 'rectangular' } },
  { printed: '0.029', statement: { halfWidth: 0.05, distribution: 'rectangular' } },
  { printed: '25', statement: { expanded: 75, k: 3 } },
  { printed: '3.9', statement: { expanded: 10, confidence: 0.95, degreesOfFreedom: 5 } },
  { printed: '6.7', statement: { expanded: 20, k: 3, reliability: 0.25 } },
])('printed: $statement has the standard uncertainty $printed', ({ printed, statement }) => {
  const decimals = printed.split('.')[1]?.length ?? 0;
  expect(contribution({ name: 'x', ...statement }).standardUncertainty.toFixed(decimals)).toBe(printed);
});

test('law: every width scales the standard uncertainty, and nothing else', () => {
  const shapes: readonly ((width: number) => ContributionStatement)[] = [
    (width) => ({ name: 'x', standardUncertainty: width }),
    (width) => ({ name: 'x', expanded: width, k: 2 }),
    (width) => ({ name: 'x', halfWidth: width, distribution: 'triangular' }),
    (width) => ({ name: 'x', resolution: width }),
    (width) => ({ name: 'x', halfWidth: width, inexactness: width / 3, distribution: 'curvilinear-trapezoid' }),
  ];
  fc.assert(
    fc.property(fc.double({ min: 1e-12, max: 1e12, noNaN: true }), (width) => {
      for (const shape of shapes) {
        const one = contribution(shape(1)).standardUncertainty;
        expect(contribution(shape(width)).standardUncertainty / (width * one)).toBeCloseTo(1, 12);
      }
    }),
  );
});

test('negative: a tolerance is not a standard deviation; its half-width needs a distribution', () => {
  expect(() => contribution({ name: 'S', halfWidth: 0.05 })).toThrow('rectangular');
  const asTolerance = contribution({ name: 'S', halfWidth: 0.05, distribution: 'rectangular' });
  expect(asTolerance.standardUncertainty).toBeLessThan(0.05 / 1.7);
});

test('law: a large offset takes no digits from the scatter of readings', () => {
  const scatter = [0.1, 0.3, -0.2, 0.05];
  const small = contribution({ name: 'x', readings: scatter });
  const large = contribution({ name: 'x', readings: scatter.map((each) => 1e6 + each) });
  expect(large.standardUncertainty).toBeCloseTo(small.standardUncertainty, 9);
});

test.each<[string, Omit<ContributionStatement, 'name'>, string]>([
  ['no width', { value: 1 }, "Write 'standard-uncertainty: 0' for an exact number"],
  ['two widths', { standardUncertainty: 1, halfWidth: 2 }, 'standard-uncertainty and half-width'],
  ['a negative width', { standardUncertainty: -1 }, 'zero or more'],
  ['a width that is no number', { standardUncertainty: Number.NaN }, 'finite number'],
  ['expanded alone', { expanded: 1 }, "coverage factor 'k' or its 'confidence'"],
  ['expanded with both', { expanded: 1, k: 2, confidence: 0.95 }, "coverage factor 'k' or its 'confidence'"],
  ['k of zero', { expanded: 1, k: 0 }, 'above zero'],
  ['k beside a half-width', { halfWidth: 1, distribution: 'rectangular', k: 2 }, "'expanded' beside it"],
  ["Student's t of exact knowledge", { standardUncertainty: 1, distribution: 'student-t' }, 'degrees-of-freedom'],
  ['a half-width of a normal', { halfWidth: 1, distribution: 'normal' }, 'standard-uncertainty or expanded'],
  ['a trapezoid of exact ends', { halfWidth: 1, distribution: 'curvilinear-trapezoid' }, 'its inexactness'],
  [
    'ends more inexact than wide',
    { halfWidth: 1, inexactness: 1.1, distribution: 'curvilinear-trapezoid' },
    'not above the half-width',
  ],
  ['inexact ends of a normal', { standardUncertainty: 1, inexactness: 0.1 }, 'curvilinear-trapezoid'],
  ['both knowledge of knowledge', { standardUncertainty: 1, degreesOfFreedom: 8, reliability: 0.25 }, 'one of them'],
  ['one reading', { readings: [1] }, 'two or more readings'],
  ['a value beside readings', { readings: [1, 2], value: 1 }, 'the readings alone'],
])('refused: %s', (_, statement, words) => {
  expect(() => contribution({ name: 'x', ...statement })).toThrow(words);
});
