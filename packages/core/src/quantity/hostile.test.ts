import fc from 'fast-check';
import { expect, test } from 'vitest';
import { choiceField, countField, textField } from './field.ts';
import { parseLevel, parseLevelWriting } from './level-text.ts';
import { nearest } from './nearest.ts';
import { pointDecimals } from './number.ts';
import { parseDecibels, parseQuantity } from './parse.ts';
import { motions, type QuantityName, quantities } from './quantities.ts';
import { curveField, levelField, quantityField, spanField, toleranceField } from './quantity-field.ts';
import { Refusal, refusalSentence, shortened } from './refusal.ts';
import { parseBand, parseSpan, parseTolerance } from './span.ts';
import { meaningsOf } from './unit-expression.ts';

const readers: Readonly<Record<string, (text: string) => unknown>> = {
  frequency: (text) => parseQuantity(text, 'frequency'),
  ratio: (text) => parseQuantity(text, 'ratio'),
  sensitivity: (text) => parseQuantity(text, 'voltage per acceleration', { decimal: 'comma' }),
  decibels: (text) => parseDecibels(text),
  level: (text) => parseLevel(text, motions),
  writing: (text) => parseLevelWriting(text, motions),
  span: (text) => parseSpan(text, 'frequency'),
  band: (text) => parseBand(text),
  tolerance: (text) => parseTolerance(text),
  count: (text) => countField('Count').read(text, pointDecimals),
};

/** Reads or refuses: nothing else, and no number that is not finite. */
function readsOrRefuses(text: string): void {
  for (const [name, read] of Object.entries(readers)) {
    try {
      for (const number of numbersIn(read(text))) expect(Number.isFinite(number), `${name}: ${text}`).toBe(true);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      expect(error.message.length).toBeLessThan(1500);
      expect(error.message).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029]/u);
    }
  }
}

function numbersIn(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}

const refusedEverywhere: readonly string[] = [
  '1e400 Hz',
  '1e-400 Hz',
  '9e999999999 Hz',
  '1e31 Hz',
  '1e-31 Hz',
  'NaN Hz',
  'Infinity Hz',
  '-Infinity',
  '0x10 Hz',
  '0b11 Hz',
  '1_000 Hz',
  '１２ Hz',
  '٣ Hz',
  '५ Hz',
  '𝟓 Hz',
  'Ⅴ Hz',
  '½ Hz',
  '5 Нz',
  '5 ηz',
  '5 Ηz',
  '5 \u202ezH',
  '5 Hz\u200b',
  '\u20665 Hz\u2069',
  '5\u0000 Hz',
  '5 Hz\u0007',
  '5\nHz',
  '5\u2028Hz',
  '5\u00ad0 Hz',
  '5 \ud800Hz',
  '5 \ue000Hz',
  '5 Hz; DROP TABLE',
  '5 Hz<script>',
  '=1+1',
  '5 Hz Hz^-1 Hz Hz^99',
  '5 Hz^0',
  '5 Hz^1e9',
  '5 Hz^999999999999',
  '5 ((((((((((((Hz',
  '5 )Hz(',
  '5 Hz/',
  '5 /Hz',
  '5 //Hz',
  '5 ^2',
  '5 constructor',
  '5 toString',
  '5 __proto__',
  '5 mconstructor',
  '5 hasOwnProperty/s',
  '5 %^999 Hz',
  '5 Hz per per s',
  '5 Hz per',
  '+-5 Hz',
  '--5 Hz',
  '5..5..5 Hz',
  '5e Hz',
  '5.5.5 Hz',
];

for (const text of refusedEverywhere) {
  test(`negative: ${JSON.stringify(text)} is refused by every reader of a value`, () => {
    for (const [name, read] of Object.entries(readers)) expect(() => read(text), name).toThrow(Refusal);
    readsOrRefuses(text);
  });
}

test('law: the two micro signs are one, and every other look-alike is named by its code', () => {
  expect(parseLevel('80 µm pp', motions)).toEqual(parseLevel('80 μm pp', motions));
  expect(parseQuantity('5 kΩ', 'resistance')).toBe(parseQuantity('5 k\u2126', 'resistance'));
  expect(() => parseQuantity('5 Нz', 'frequency')).toThrow('U+041D');
  expect(() => parseQuantity('5 мm', 'length')).toThrow('U+043C');
  expect(() => parseQuantity('5 Hz\u200b', 'frequency')).toThrow('U+200B');
  expect(() => parseQuantity('5 \u202eHz', 'frequency')).toThrow('U+202E');
});

test('negative: very long texts are refused before they are searched', () => {
  const long: readonly string[] = [
    '9'.repeat(1_000_000),
    `5 ${'g '.repeat(500_000)}`,
    `5${' '.repeat(1_000_000)}Hz`,
    `5 ${'('.repeat(1_000_000)}`,
    `1${'-'.repeat(1_000_000)}`,
    `5 Hz ${'to '.repeat(300_000)}`,
    `±${' '.repeat(1_000_000)}5`,
    'rms '.repeat(250_000),
    `5 dB re ${'1 '.repeat(400_000)}`,
    '\u202e'.repeat(1_000_000),
    '💥'.repeat(400_000),
  ];
  for (const text of long) {
    for (const [name, read] of Object.entries(readers)) expect(() => read(text), name).toThrow(Refusal);
    readsOrRefuses(text);
    expect(meaningsOf(text)).toEqual([]);
  }
});

test('negative: texts built against a searching reader end quickly within the permitted length', () => {
  for (const text of [
    `5 ${'g '.repeat(190)}`,
    `5 ${'g*'.repeat(22)}g`,
    `5 ${'F/C*'.repeat(11)}g`,
    `1${' '.repeat(390)}-`,
    `1 ${'-'.repeat(390)}`,
    `1 ${'- '.repeat(190)}1`,
    `1 ${'.. '.repeat(120)}1`,
    `1 ${'rms '.repeat(90)}`,
    `1 ${'mil'.repeat(120)}`,
    `1 ${'Hz '.repeat(120)}`,
    `±${'1,'.repeat(190)}%`,
    `1 ${'hz/'.repeat(100)}`,
  ]) {
    readsOrRefuses(text);
  }
});

test('law: any text at all is read or refused, and the refusal can be shown', () => {
  const pieces = fc.constantFrom(
    '5',
    '-',
    '1e9',
    '.',
    ',',
    ' ',
    'mm',
    'g',
    'Hz',
    '/',
    '(',
    ')',
    '^',
    'per',
    'rms',
    'pp',
    'dB',
    're',
    '1',
    'to',
    '..',
    '±',
    '%',
    '°',
    'µ',
    'ohm',
    'C',
    '\u202e',
    'м',
    'NaN',
  );
  fc.assert(
    fc.property(
      fc.array(pieces, { maxLength: 14 }).map((each) => each.join('')),
      readsOrRefuses,
    ),
    { numRuns: 3000 },
  );
  fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 60 }), readsOrRefuses), { numRuns: 1000 });
});

test('law: what is read is never silently another quantity: its unit converts back to the same number', () => {
  const units = Object.entries(quantities).flatMap(([name, { metric, us, unit }]) =>
    [...metric, ...us, unit].filter((each) => each !== '1').map((each) => [name as QuantityName, each] as const),
  );
  fc.assert(
    fc.property(fc.constantFrom(...units), fc.integer({ min: 1, max: 9999 }), ([name, unit], digits) => {
      const [one, many] = [parseQuantity(`1 ${unit}`, name), parseQuantity(`${digits} ${unit}`, name)];
      const zero = name === 'temperature' ? parseQuantity(`0 ${unit}`, name) : 0;
      expect((many - zero) / (one - zero)).toBeCloseTo(digits, 5);
    }),
  );
});

test('negative: fields refuse whatever is not text of their kind', () => {
  const fields = [
    quantityField('frequency', 'f'),
    quantityField('ratio', 'ratio'),
    levelField(motions, 'level'),
    spanField('frequency', 'span'),
    toleranceField('tolerance'),
    curveField('acceleration density', 'noise'),
    choiceField(['one', 'two'], 'choice'),
    textField('text'),
  ];
  for (const field of fields) {
    for (const raw of [null, undefined, Symbol.iterator, () => 5, [1, 2], new Map(), 5n, true]) {
      expect(() => field.read(raw, pointDecimals), `${field.meaning}: ${String(raw)}`).toThrow(Refusal);
    }
  }
  expect(() => textField('text').read('x'.repeat(2001), pointDecimals)).toThrow(Refusal);
  expect(() => curveField('acceleration density', 'noise').read({ '1 Hz': '0 ug/rtHz' }, pointDecimals)).toThrow(
    Refusal,
  );
  expect(() => curveField('acceleration density', 'noise').read({}, pointDecimals)).toThrow(Refusal);
});

test('law: what a refusal shows is short and acts on nothing', () => {
  expect(shortened('a\u202eb\u0000c')).toBe('a·b·c');
  expect(shortened('💥'.repeat(200), 10)).toBe(`${'💥'.repeat(10)}…`);
  expect(shortened('x'.repeat(1e6)).length).toBe(81);
  expect(shortened('exactly', 7)).toBe('exactly');
  expect(refusalSentence({ read: '', expected: 'a value' })).toBe('read nothing, expected a value.');
  expect(nearest('x'.repeat(1e6), ['abc'])).toBeUndefined();
});
