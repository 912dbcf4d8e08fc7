import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { contribution } from './contribution.ts';
import { parseExpression } from './expression.ts';
import { modelOf, propagated } from './propagation.ts';

const answers = JSON.parse(
  readFileSync(new URL('../../../../evidence/scipy/uncertainty.json', import.meta.url), 'utf8'),
);
const names = ['a', 'b', 'c'] as const;
const inputsAt = (point: readonly number[]) =>
  names.map((name, i) => contribution({ name, value: point[i]!, standardUncertainty: 0.1 }));

test.each(answers.slopes as { model: string; value: number; slopes: number[] }[])(
  'independent: value and slopes of $model agree with a complex step in numpy',
  ({ model, value, slopes }) => {
    const inputs = inputsAt(answers.point);
    const result = propagated(parseExpression(model), inputs);
    expect(result.estimate).toBeCloseTo(value, 12);
    for (const [i, input] of inputs.entries()) {
      const slope = result.sensitivities.get(input) ?? 0;
      expect(Math.abs(slope - slopes[i]!)).toBeLessThan(1e-12 * (1 + Math.abs(slopes[i]!)));
    }
  },
);

/** Models that have a value and a slope wherever a, b and c are between 0.5 and 2. */
const model = fc.letrec<{ term: string; leaf: string }>((tie) => ({
  leaf: fc.constantFrom('a', 'b', 'c', '2', '0.7', 'pi'),
  term: fc.oneof(
    { maxDepth: 4, withCrossShrink: true },
    tie('leaf'),
    fc.tuple(tie('term'), fc.constantFrom('+', '-', '*'), tie('term')).map(([l, o, r]) => `(${l} ${o} ${r})`),
    fc.tuple(tie('term'), tie('term')).map(([l, r]) => `(${l} / (1 + (${r}) ^ 2))`),
    fc.tuple(fc.constantFrom('sin', 'cos', 'atan'), tie('term')).map(([f, x]) => `${f}(${x})`),
    tie('term').map((x) => `sqrt(1 + (${x}) ^ 2)`),
    tie('term').map((x) => `log(2 + cos(${x}))`),
    tie('term').map((x) => `exp(sin(${x}))`),
    tie('term').map((x) => `asin(0.9 * sin(${x}) / 2) + abs(3 + sin(${x})) + max(-2, cos(${x})) - tan(sin(${x}) / 2)`),
  ),
})).term;
const place = fc.double({ min: 0.5, max: 2, noNaN: true });

test('law: slopes agree with central differences', () => {
  fc.assert(
    fc.property(model, fc.tuple(place, place, place), (text, point) => {
      fc.pre(text.length <= 2000);
      const expression = parseExpression(text);
      const inputs = inputsAt(point);
      const result = propagated(expression, inputs);
      const at = modelOf(expression, names);
      for (const [i, input] of inputs.entries()) {
        const h = 1e-5;
        const moved = (by: number) => at(point.map((each, j) => (i === j ? each + by : each)));
        const wide = (moved(2 * h) - moved(-2 * h)) / (4 * h);
        const narrow = (moved(h) - moved(-h)) / (2 * h);
        const difference = (4 * narrow - wide) / 3;
        const curvature = Math.abs(narrow - wide);
        const rounding = (1e-13 * (1 + Math.abs(result.estimate))) / h;
        const slope = result.sensitivities.get(input) ?? 0;
        expect(Math.abs(slope - difference)).toBeLessThan(10 * curvature + 100 * rounding + 1e-6 * Math.abs(slope));
      }
    }),
    { numRuns: 300 },
  );
});

test('law: the model of the trials and the explained propagation give the same value', () => {
  fc.assert(
    fc.property(model, fc.tuple(place, place, place), (text, point) => {
      fc.pre(text.length <= 2000);
      const expression = parseExpression(text);
      expect(modelOf(expression, names)(point)).toBe(propagated(expression, inputsAt(point)).estimate);
    }),
  );
});

test('law: an exponent that is a plain whole number may stand on a base of zero or below', () => {
  const at = (value: number, text: string) => {
    const x = contribution({ name: 'x', value, standardUncertainty: 1 });
    return propagated(parseExpression(text), [x]).sensitivities.get(x);
  };
  expect(at(-2, 'x ^ 3')).toBe(12);
  expect(at(0, 'x ^ 2')).toBe(0);
  expect(at(0, 'x ^ 1')).toBe(1);
  expect(at(0, 'x ^ 0 + x')).toBe(1);
});

test('refused: a name without an input, and a kink at the estimate', () => {
  const x = contribution({ name: 'length', value: 0, standardUncertainty: 1 });
  expect(() => propagated(parseExpression('2 * lenght'), [x])).toThrow("Did you mean 'length'?");
  expect(() => propagated(parseExpression('abs(length)'), [x])).toThrow('slope');
  expect(() => propagated(parseExpression('max(length, 0)'), [x])).toThrow('slope');
  expect(() => propagated(parseExpression('1 / length'), [x])).toThrow('finite value');
});
