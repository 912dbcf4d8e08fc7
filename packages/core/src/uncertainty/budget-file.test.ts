import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Broken, Refusal } from '../quantity/index.ts';
import { readBudget } from './budget-file.ts';

const plain = {
  model: 'R = V / I',
  inputs: {
    V: { value: 5, 'standard-uncertainty': 0.01, unit: 'V', source: 'certificate' },
    I: { value: 0.02, 'half-width': 1e-4, distribution: 'rectangular', 'degrees-of-freedom': 'infinite' },
  },
  coverage: 0.95,
  trials: 10_000,
  seed: 7,
};
const withInput = (own: Readonly<Record<string, unknown>>) => ({ ...plain, inputs: { ...plain.inputs, V: own } });

test('a budget is read as it stands; JSON text says the same', () => {
  const read = readBudget(plain);
  expect(read.expression.measurand).toBe('R');
  expect(read.inputs.map((each) => [each.name, each.estimate, each.distribution])).toEqual([
    ['V', 5, 'normal'],
    ['I', 0.02, 'rectangular'],
  ]);
  expect(read.inputs[0]).toMatchObject({ unit: 'V', source: 'certificate', degreesOfFreedom: 'infinite' });
  expect([read.level, read.trials, read.seed, read.levelStated]).toEqual([0.95, 10_000, 7, true]);
  expect(readBudget(JSON.stringify(plain)).inputs).toEqual(read.inputs);
});

test('every way of stating an input is read', () => {
  const standard = (own: Readonly<Record<string, unknown>>) =>
    readBudget(withInput(own)).inputs[0]!.standardUncertainty;
  expect(standard({ value: 5, expanded: 0.02, k: 2 })).toBe(0.01);
  expect(standard({ value: 5, resolution: 0.1 })).toBeCloseTo(0.1 / Math.sqrt(12), 12);
  expect(standard({ value: 5, 'half-width': 0.1, distribution: 'arcsine' })).toBeCloseTo(0.1 / Math.SQRT2, 12);
  expect(standard({ value: 5, 'standard-uncertainty': 0 })).toBe(0);
  expect(standard({ readings: [5, 5.2, 5.1] })).toBeCloseTo(0.1 / Math.sqrt(3), 12);
  expect(readBudget(withInput({ value: 5, 'standard-uncertainty': 1, direction: 'upward' })).inputs[0]!.direction).toBe(
    'upward',
  );
});

test.each<[string, unknown, string]>([
  ['no mapping', [plain], 'a budget: a mapping with title, model'],
  ['text that is no JSON', 'budget.yaml', 'the content of a budget file'],
  ['nothing', undefined, 'a budget: a mapping'],
  ['no model', { inputs: plain.inputs }, 'the model, such as "R = V / I"'],
  ['a misspelled key', { ...plain, correlation: [] }, "Did you mean 'correlations'?"],
  ['a misspelled key of an input', withInput({ value: 5, 'half-widht': 1 }), "Did you mean 'half-width'?"],
  ['an inherited word for a key', JSON.parse('{"model": "a", "__proto__": {}}'), 'a key of a budget'],
  ['a value in quotes', withInput({ value: '5', 'standard-uncertainty': 1 }), 'plain numbers, without quotes'],
  ['a value with a unit', withInput({ value: '5 V', 'standard-uncertainty': 1 }), "a label under 'unit'"],
  ['no value', withInput({ 'standard-uncertainty': 1 }), 'input V without value'],
  ['no uncertainty', withInput({ value: 5 }), "Write 'standard-uncertainty: 0' for an exact number"],
  ['an infinite value', withInput({ value: Number.POSITIVE_INFINITY, 'standard-uncertainty': 1 }), 'a plain number'],
  ['a misspelled distribution', withInput({ value: 5, 'half-width': 1, distribution: 'rectangle' }), "'rectangular'"],
  ['a strange direction', withInput({ value: 5, 'standard-uncertainty': 1, direction: 'left' }), 'both, upward'],
  [
    'strange degrees of freedom',
    withInput({ value: 5, 'standard-uncertainty': 1, 'degrees-of-freedom': 'many' }),
    "or 'infinite'",
  ],
  ['an input that is a number', { ...plain, inputs: { ...plain.inputs, V: 5 } }, 'input V: a mapping with value'],
  ['an input too few', { ...plain, model: 'R = V / I * k' }, "State what is known of 'k'"],
  ['an input too many', { ...plain, model: 'R = V' }, "an input that stands in the model 'R = V'"],
  ['an input misspelled in the model', { ...plain, model: 'R = V / i2' }, 'input I'],
  ['a name with a hyphen', { ...plain, inputs: { ...plain.inputs, 'V-2': plain.inputs.V } }, "Write 'v_2'"],
  [
    'a name of the language',
    { ...plain, inputs: { ...plain.inputs, sin: plain.inputs.V } },
    'a word of the model language',
  ],
  ['an input that is also read', { ...plain, readings: { V: [1, 2], I: [1, 2] } }, 'each input once'],
  ['readings that are no list', { model: 'a', readings: { a: 5 } }, 'a list of plain numbers'],
  ['a reading that is no number', { model: 'a', readings: { a: [1, 'x'] } }, 'reading 2 of a'],
  ['a level in percent', { ...plain, coverage: 95 }, 'For 95 % write 0.95.'],
  [
    'a correlation with a stranger',
    { ...plain, correlations: [{ between: ['V', 'J'], coefficient: 0.5 }] },
    'one of the inputs: V, I',
  ],
  [
    'a correlation of one',
    { ...plain, correlations: [{ between: ['V'], coefficient: 0.5 }] },
    "two names under 'between'",
  ],
  ['a correlation out of range', { ...plain, correlations: [{ between: ['V', 'I'], coefficient: 2 }] }, 'from -1 to 1'],
  ['correlations that are no list', { ...plain, correlations: { V: 1 } }, 'correlations: a list of'],
  [
    'a model without a value',
    withInput({ value: 5, 'standard-uncertainty': 1 }) && { ...plain, model: 'R = V / (I - 0.02)' },
    'finite value',
  ],
])('refused: %s', (_, content, words) => {
  expect(() => readBudget(content)).toThrow(Refusal);
  expect(() => readBudget(content)).toThrow(words);
});

test('law: any plain data is read or refused, never anything else', () => {
  const key = fc.constantFrom(
    'model',
    'inputs',
    'readings',
    'correlations',
    'coverage',
    'value',
    'k',
    'between',
    'a',
    'trials',
  );
  const data = fc.letrec((tie) => ({
    any: fc.oneof(
      { maxDepth: 4 },
      fc.constantFrom('a', 'a + b', '', 'normal', 0, 1, -1, 0.5, Number.NaN, null, true),
      fc.array(tie('any'), { maxLength: 3 }),
      fc.dictionary(key, tie('any'), { maxKeys: 5 }),
    ),
  })).any;
  fc.assert(
    fc.property(data, (content) => {
      try {
        readBudget(content);
      } catch (error) {
        expect(error).toBeInstanceOf(Refusal);
        expect(error).not.toBeInstanceOf(Broken);
      }
    }),
    { numRuns: 2000 },
  );
});
