import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { contribution } from '../contribution.ts';
import { randomFrom } from '../random.ts';
import { distributionNamed, distributions } from './distributions.ts';

const answers = JSON.parse(
  readFileSync(new URL('../../../../../evidence/scipy/uncertainty.json', import.meta.url), 'utf8'),
);
const count = 200_000;

/** One input of each shape, as the quantiles of scipy were computed. */
const examples = {
  normal: contribution({ name: 'x', standardUncertainty: 1 }),
  rectangular: contribution({ name: 'x', standardUncertainty: 1, distribution: 'rectangular' }),
  resolution: contribution({ name: 'x', resolution: Math.sqrt(12) }),
  triangular: contribution({ name: 'x', standardUncertainty: 1, distribution: 'triangular' }),
  'u-shaped': contribution({ name: 'x', standardUncertainty: 1, distribution: 'u-shaped' }),
  'student-t': contribution({ name: 'x', standardUncertainty: 1, distribution: 'student-t', degreesOfFreedom: 5 }),
  'curvilinear-trapezoid': contribution({
    name: 'x',
    halfWidth: 1,
    inexactness: 0.25,
    distribution: 'curvilinear-trapezoid',
  }),
} as const;

test('every distribution has an example here, a name of its own, and sources', () => {
  expect(Object.keys(examples).sort()).toEqual(distributions.map((each) => each.kind).sort());
  for (const each of distributions) expect(each.sources.length).toBeGreaterThan(0);
  const names = distributions.flatMap((each) => [each.kind, ...('alsoCalled' in each ? each.alsoCalled! : [])]);
  expect(new Set(names).size).toBe(names.length);
});

test.each(distributions)(
  'independent: $kind numbers fall below the quantiles of scipy as often as they should',
  (shape) => {
    const example = examples[shape.kind];
    const deviation = shape.deviations(example, randomFrom(3));
    const drawn = Array.from({ length: count }, deviation);
    for (const [i, probability] of (answers.probabilities as number[]).entries()) {
      const below = drawn.filter((each) => each < answers.quantiles[shape.kind][i]).length / count;
      const error = Math.sqrt((probability * (1 - probability)) / count);
      expect(Math.abs(below - probability), `at probability ${probability}`).toBeLessThan(4.5 * error);
    }
  },
);

test.each(distributions)('law: $kind numbers scatter by the standard deviation the shape states', (shape) => {
  const example = examples[shape.kind];
  const deviation = shape.deviations(example, randomFrom(5));
  let squares = 0;
  for (let i = 0; i < count; i++) squares += deviation() ** 2;
  const stated = shape.standardDeviation(example)!;
  expect(Math.sqrt(squares / count) / stated).toBeCloseTo(1, 1.7);
});

test("law: Student's t of two degrees of freedom or fewer has no standard deviation", () => {
  const shape = distributionNamed('student-t');
  const spread = { standardUncertainty: 1, inexactness: 0 };
  expect(shape.standardDeviation({ ...spread, degreesOfFreedom: 2 })).toBeUndefined();
  expect(shape.standardDeviation({ ...spread, degreesOfFreedom: 3 })).toBeCloseTo(Math.sqrt(3), 12);
  expect(shape.standardDeviation({ ...spread, degreesOfFreedom: 'infinite' })).toBe(1);
});

test('a distribution answers to its other names, and a misspelling gets a suggestion', () => {
  expect(distributionNamed('arcsine').kind).toBe('u-shaped');
  expect(distributionNamed('Uniform').kind).toBe('rectangular');
  expect(() => distributionNamed('rectangle')).toThrow("Did you mean 'rectangular'?");
  expect(() => distributionNamed('constructor')).toThrow('expected a distribution');
});
