import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { Refusal } from '../../quantity/index.ts';
import { calculate, calculationJson } from '../../working/index.ts';
import { uncertaintyBudget } from './uncertainty-budget.ts';

const root = new URL('../../../../../', import.meta.url);
const example = (path: string) => parse(readFileSync(new URL(path, root), 'utf8')) as Record<string, unknown>;
const shownOf = (file: unknown) =>
  Object.fromEntries(calculate(uncertaintyBudget, { file }).results.map((each) => [each.name, each.shown]));
const rulesOf = (file: unknown) => calculate(uncertaintyBudget, { file }).findings.map((each) => each.rule);

// JCGM 100:2008, H.1 (second-hand): 50.000838 mm, u 32 nm, 16.7 degrees of freedom, k 2.92.
test('printed: the example of the end gauge', () => {
  const { results, findings } = calculate(uncertaintyBudget, {
    file: { ...example(uncertaintyBudget.example.file!), trials: 100_000 },
  });
  const shown = Object.fromEntries(results.map((each) => [each.name, each.shown]));
  expect(results.map((each) => each.name)).toEqual([
    'estimate',
    'standard-uncertainty',
    'degrees-of-freedom',
    'coverage-factor',
    'expanded-uncertainty',
    'interval-low',
    'interval-high',
    'trials-mean',
    'trials-standard-uncertainty',
    'trials-interval-low',
    'trials-interval-high',
  ]);
  expect(shown.estimate).toBe('50000838 nm');
  expect(shown['standard-uncertainty']).toBe('31.7 nm');
  expect(shown['degrees-of-freedom']).toMatch(/^16\.7/);
  expect(shown['coverage-factor']).toMatch(/^2\.92/);
  expect(results.find((each) => each.name === 'expanded-uncertainty')!.substituted).toBe('U = 2.921 · 31.7 nm');
  for (const each of findings) expect(each.sources.length).toBeGreaterThan(0);
});

// JCGM 100:2008, H.2 (second-hand): X 219.847 Ω, u 0.295 Ω.
test('printed: the example of the reactance', () => {
  const shown = shownOf({ ...example('examples/uncertainty/resistance-reactance.yaml'), trials: 20_000 });
  expect(shown.estimate).toBe('219.85 Ω');
  expect(shown['standard-uncertainty']).toBe('0.296 Ω');
  expect(shown['degrees-of-freedom']).toBe('4');
});

const linear = { model: 'a + b', inputs: { a: input(3, 0.3), b: input(4, 0.4) }, coverage: 0.95, trials: 20_000 };

function input(value: number, u: number, more: Readonly<Record<string, unknown>> = {}) {
  return { value, 'standard-uncertainty': u, ...more };
}

test('infinite degrees of freedom are a word when shown and null in JSON, never NaN or Infinity', () => {
  const found = calculate(uncertaintyBudget, { file: linear });
  const degrees = found.results.find((each) => each.name === 'degrees-of-freedom')!;
  expect(degrees.shown).toBe('infinite');
  expect(degrees.json).toEqual({ value: null, unit: '1', shown: 'infinite' });
  const text = JSON.stringify(calculationJson(found));
  expect(text).not.toMatch(/NaN|Infinity/);
});

test('law: an exact budget has no width, and says so without a strange number', () => {
  const shown = shownOf({ ...linear, inputs: { a: input(3, 0), b: input(4, 0) } });
  expect(shown).toMatchObject({ estimate: '7', 'standard-uncertainty': '0', 'interval-low': '7', 'trials-mean': '7' });
});

test('what rests on something unsaid is a finding', () => {
  const { coverage: _, ...unstated } = linear;
  expect(rulesOf(unstated)).toContain('uncertainty/level-not-stated');
  expect(rulesOf({ ...linear, inputs: { ...linear.inputs, a: input(3, 0.3, { 'degrees-of-freedom': 8 }) } })).toContain(
    'uncertainty/drawn-as-normal',
  );
  const ties = [{ between: ['a', 'b'], coefficient: 0.5 }];
  const few = { distribution: 'student-t', 'degrees-of-freedom': 8 };
  const tied = { ...linear, correlations: ties, inputs: { a: input(3, 0.3, few), b: input(4, 0.4, few) } };
  expect(rulesOf(tied)).toContain('uncertainty/correlated-degrees-of-freedom');
  expect(rulesOf({ ...linear, correlations: ties })).not.toContain('uncertainty/correlated-degrees-of-freedom');
  expect(rulesOf({ ...linear, inputs: { ...linear.inputs, a: { readings: [3, 3, 3, 3] } } })).toContain(
    'uncertainty/readings-alike',
  );
});

test('without trials their outputs are left out and a finding says why', () => {
  const file = { ...linear, inputs: { ...linear.inputs, a: { readings: [2.9, 3, 3.2] } } };
  expect(Object.keys(shownOf(file))).not.toContain('trials-mean');
  expect(rulesOf(file)).toContain('uncertainty/no-trials');
});

// JCGM 101:2008, 9.4 (from memory): the law of propagation gives u = 0 where the model is flat.
test('negative: a model that is flat at its estimates is called out', () => {
  const flat = { model: 'x ^ 2 + y ^ 2', inputs: { x: input(0, 5), y: input(0, 5) }, coverage: 0.95, trials: 50_000 };
  expect(rulesOf(flat)).toContain('uncertainty/propagation-differs-from-trials');
  expect(rulesOf({ ...linear, trials: 200_000 })).not.toContain('uncertainty/propagation-differs-from-trials');
});

test('law: whatever the size of the inputs, the answer is made of finite numbers or refused', () => {
  const any = fc.double({ noNaN: true, noDefaultInfinity: true });
  const width = fc.double({ min: 0, noNaN: true, noDefaultInfinity: true });
  const model = fc.constantFrom('a + b', 'a * b', 'a / b', 'a - b', 'exp(a) * b', 'a ^ b', 'sqrt(a) + b');
  fc.assert(
    fc.property(model, any, width, any, width, (formula, a, ua, b, ub) => {
      const file = { model: formula, inputs: { a: input(a, ua), b: input(b, ub) }, coverage: 0.95, trials: 2000 };
      try {
        const text = JSON.stringify(calculationJson(calculate(uncertaintyBudget, { file })));
        expect(text).not.toMatch(/NaN|Infinity|null,"unit":"[^1]/);
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
      }
    }),
    { numRuns: 300 },
  );
});
