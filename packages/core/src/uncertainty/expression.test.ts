import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Refusal } from '../quantity/index.ts';
import { parseExpression } from './expression.ts';
import { modelOf } from './propagation.ts';

const value = (text: string, values: Readonly<Record<string, number>> = {}) =>
  modelOf(parseExpression(text), Object.keys(values))(Object.values(values));

test.each<[string, number]>([
  ['1 + 2 * 3', 7],
  ['(1 + 2) * 3', 9],
  ['8 - 3 - 2', 3],
  ['16 / 4 / 2', 2],
  ['2 ^ 3 ^ 2', 512],
  ['-3 ^ 2', -9],
  ['2 ^ -2', 0.25],
  ['2 * -3', -6],
  ['--3', 3],
  ['1.5e-3 * 2E3', 3],
  ['.5 + 5.', 5.5],
  ['2 × 3 − 1·4', 2],
  ['cos(pi)', -1],
  ['max(1, 5, 3) - min(4, 2)', 3],
  ['sqrt(abs(-16))', 4],
  ['log(exp(2)) + ln(exp(1)) + log10(1000)', 6],
  ['atan(1) * 4 / pi', 1],
  ['y = 3', 3],
])('law of arithmetic: %s is %d', (text, expected) => {
  expect(value(text)).toBeCloseTo(expected, 12);
});

test('names may be of any script, and the result may have one', () => {
  expect(value('Δf_1 = f₁ + α', { 'f₁': 2, α: 3 })).toBe(5);
  expect(parseExpression('Δf_1 = f₁ + α').measurand).toBe('Δf_1');
  expect(parseExpression('a + b').measurand).toBeUndefined();
  expect([...parseExpression('a + b * a').names]).toEqual([
    ['a', 1],
    ['b', 5],
  ]);
});

test.each<[string, string]>([
  ['', "a number, a name or '(' at column 1, where the end stands"],
  ['a +', 'at column 4, where the end stands'],
  ['a b', "an operator (+ - * / ^) or the end at column 3, where 'b' stands. A product is written with '*'"],
  ['2a', "at column 2, where 'a' stands. A product is written with '*'"],
  ['(a + b', "')' to close the '(' at column 1 at column 7"],
  ['a + b)', "at column 6, where ')' stands"],
  ['a ** 2', "at column 4, where '*' stands. A power is written with '^'"],
  ['sine(a)', "Did you mean 'sin'?"],
  ['a(2)', "at column 1, where 'a' stands"],
  ['sin a', "'(' after the function sin at column 5"],
  ['sin(a, b)', 'one argument of sin, not 2'],
  ['min(a)', 'two or more arguments of min, not 1'],
  ['sqrt(1,5)', 'Decimals are written with a point'],
  ['a = b = c', "at column 7 stands '='. A model has one equals sign"],
  ['a + b = c', 'one name before the equals sign'],
  ['sin = a', 'one name before the equals sign'],
  ['a $ b', "at column 3 stands '$'"],
  ['1e999', 'a number that can be computed with'],
])('refused with its place: %s', (text, words) => {
  expect(() => parseExpression(text)).toThrow(Refusal);
  expect(() => parseExpression(text)).toThrow(words);
});

test('refused: a model that is too deep or too long, without harm', () => {
  expect(value(`${'('.repeat(99)}1${')'.repeat(99)}`)).toBe(1);
  expect(() => parseExpression(`${'('.repeat(900)}1${')'.repeat(900)}`)).toThrow('100 levels');
  expect(() => parseExpression(`${'-'.repeat(1500)}1`)).toThrow('100 levels');
  expect(() => parseExpression('2^'.repeat(900) + 2)).toThrow('100 levels');
  expect(() => parseExpression('1 + '.repeat(600))).toThrow('2000 characters');
  expect(value(`0${'+1'.repeat(999)}`)).toBe(999);
});

test('law: any text is read or refused, never anything else', () => {
  const piece = fc.constantFrom(
    'a',
    'sin',
    '(',
    ')',
    '+',
    '-',
    '*',
    '/',
    '^',
    ',',
    '1',
    '.5',
    'e',
    ' ',
    '=',
    'é',
    '𝛼',
    '__proto__',
  );
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string(),
        fc.array(piece, { maxLength: 30 }).map((each) => each.join('')),
      ),
      (text) => {
        try {
          parseExpression(text);
        } catch (error) {
          expect(error).toBeInstanceOf(Refusal);
        }
      },
    ),
    { numRuns: 2000 },
  );
});
