import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { stringify } from 'yaml';
import { type Placed, plainOf, typedOf } from './placed.ts';
import { bytesOf, refused } from './refused.ts';
import { textFile } from './text-file.ts';
import { unseenIn } from './unseen.ts';
import { placedYaml } from './yaml-document.ts';
import { reservedName } from './yaml-reasons.ts';

const placed = (text: string): Placed => placedYaml(textFile(bytesOf(text), 'plant.yaml'));
const refusedText = (text: string) => refused(() => placed(text));

/** With prototypes again, so that it compares with a literal. */
const plain = (text: string): unknown => JSON.parse(JSON.stringify(plainOf(placed(text))));

test('numbers are those of YAML 1.2, words stay words, and what was typed is kept', () => {
  const text =
    'a: 012\nb: 0x1F\nc: yes\nd: on\ne: ~\nf: 1e3\ng: 2026-03-01\nh: 12345678901234567890\ni: "012"\nj: true';
  expect(plain(text)).toEqual({
    ...{ a: 12, b: 31, c: 'yes', d: 'on', e: null, f: 1000, g: '2026-03-01' },
    ...{ h: 12345678901234567000, i: '012', j: true },
  });
  expect(typedOf(placed(text))).toMatchObject({ a: '012', b: '0x1F', e: '~', f: '1e3', h: '12345678901234567890' });
  expect(typedOf(placed('012: x\n1.50: y'))).toMatchObject({ '012': 'x', '1.50': 'y' });
});

test('every part has its place', () => {
  const root = placed('# a plant\n\nmachines:\n  P-301: {power: 160 kW}\n  list:\n    - one\n    # more\n    - two\n');
  const places: string[] = [];
  const walk = (part: Placed): void => {
    places.push(`${part.line}:${part.column} ${part.path} ${part.kind}`);
    if (part.kind === 'list') part.elements.forEach(walk);
    if (part.kind === 'map') for (const { value } of part.entries) walk(value);
  };
  walk(root);
  expect(places).toEqual([
    '3:1  map',
    '4:3 machines map',
    '4:10 machines/P-301 map',
    '4:18 machines/P-301/power scalar',
    '6:5 machines/list list',
    '6:7 machines/list/1 scalar',
    '8:7 machines/list/2 scalar',
  ]);
});

test('an empty file, comments, a block text and one mark of a document are read', () => {
  expect(plain('')).toBe(null);
  expect(plain('# nothing yet\n\n   \n')).toBe(null);
  expect(plain('---\na: |\n  one\n  # not a comment\n\n  two\n...\n')).toEqual({ a: 'one\n# not a comment\n\ntwo\n' });
});

const many = (count: number, part: (index: number) => string, between = '\n') =>
  Array.from({ length: count }, (_, index) => part(index)).join(between);

const bomb = many(9, (i) => `k${i}: &a${i} [${many(9, () => (i === 0 ? 'x' : `*a${i - 1}`), ', ')}]`);

test.each([
  ['billion laughs', bomb, 1, 5, "read '&a0', expected a value that is said once"],
  ['an alias', 'a: 1\nb: *a', 2, 4, 'no YAML aliases'],
  ['a merge key', 'a: 1\nb:\n  <<: {c: 1}', 3, 3, 'no merge keys'],
  ['a tag', 'a: !!binary x', 1, 4, 'a value without a YAML tag'],
  ['an own tag', 'a: !shell x', 1, 4, 'a value without a YAML tag'],
  ['a directive', '%YAML 1.1\n---\na: 1', 1, 1, 'no YAML directives'],
  ['an explicit key', '? a\n: 1', 1, 1, "no '?' keys"],
  ['two documents', 'a: 1\n---\na: 2', 2, 1, 'one document in a file'],
  ['two documents, one ended', 'a: 1\n...\nb: 2', 3, 1, 'one document in a file'],
  ['a mapping as key', '{a: 1}: 2', 1, 1, 'a word as key'],
  ['a repeated key', 'a: 1\nb: 2\na: 3', 3, 1, 'each key once. It stands in line 1 already.'],
  ['a key repeated in quotes', 'a: 1\n"a": 2', 2, 1, 'each key once'],
  ['a key repeated in other code points', 'é: 1\n"e\\u0301": 2', 2, 1, 'each key once'],
  ['no key', 'a: 1\n: 2', 2, 1, "a key before the ':'"],
  ['__proto__', '__proto__: {polluted: true}', 1, 1, 'not a reserved word'],
  ['constructor', 'a:\n  constructor: {prototype: {polluted: true}}', 2, 3, 'not a reserved word'],
  ['a key that hides a character', 'P-301\u200d: 1', 1, 1, 'visible characters'],
  ['direction marks by escape', 'a: "x\\u202ey"', 1, 4, "read 'U+202E'"],
  ['half a character by escape', 'a: "\\ud800"', 1, 4, "read 'U+D800'"],
  ['NUL by escape in a key', '"\\0": 1', 1, 1, "read 'U+0000'"],
  ['tabs as indentation', 'a:\n\tb: 1', 2, 1, 'indentation by spaces'],
  ['an unterminated quote', 'a:\n  b: "Pump\n  c: 1', 2, 6, 'a closing "'],
  ["an unterminated '", "a:\n  b: 'Pump's\n  c: 1", 2, 12, "'key: value' or '- value'"],
  ['a quote closed by the next one', 'a:\n  b: "Pump\n    c: "160 kW"\n', 2, 6, 'Was its closing quote forgotten?'],
  ['an unclosed list', 'a: [1, 2\nb: 3', 2, 1, 'Is a closing ] or } missing?'],
  ['no space after the colon', 'a: 1\npower:160 kW', 2, 1, "Is the space after the ':' missing?"],
  ['two colons in a line', 'notes: P-301: leaking', 1, 8, 'in quotes'],
  ['a line indented too far', 'a:\n  b: 1\n    c: 2', 2, 6, 'The next line is indented'],
  ['a line indented too little', 'a:\n    b: 1\n  c: 2', 3, 1, 'Check the indentation'],
  ['10 000 levels of lists', '['.repeat(10_000), 1, 41, 'at most 40 levels'],
  ['10 000 levels in block style', `${'- '.repeat(10_000)}x`, 1, 81, 'at most 40 levels'],
  ['1 000 000 keys', many(1_000_000, (i) => `k${i}: ${i}`), 500_001, 1, 'at most 500000 lines'],
  [
    '1 000 000 keys in a line',
    `{${many(1_000_000, (i) => `k${i}: ${i}`, ',')}}`,
    1,
    2_444_445,
    'at most 500000 values',
  ],
  ['a text of 1 MB', `a: ${'x'.repeat(1_000_000)}`, 1, 4, 'at most 20000 characters. It has 1000000.'],
  ['a quoted text of 1 MB', `a: "${'x'.repeat(1_000_000)}"`, 1, 4, 'at most 20000 characters'],
  ['a block text of 1 MB', `a: |\n  ${'x\n  '.repeat(250_000)}`, 2, 1, 'at most 20000 characters'],
  ['a key of 1 kB', `${'k'.repeat(1000)}: 1`, 1, 1, 'a key of at most 200 characters'],
  ['a flood of commas', `[${','.repeat(300_000)}`, 1, 3, "read '[,,,"],
  ['a flood of closing marks', `a: 1\n${'] '.repeat(300_000)}`, 2, 1, "read '] ] ]"],
  ['a flood of comments', `a:\n${'  #\n'.repeat(2_000_000)}  b: 1`, 500_001, 1, 'at most 500000 lines'],
  ['a flood of quotes', 'a: "x\n'.repeat(100_000), 1, 4, 'a closing "'],
])('negative: %s is refused with its place, and fast', { retry: 2 }, (_, text, line, column, about) => {
  const start = performance.now();
  const { refusals, message } = refusedText(text);
  expect(performance.now() - start).toBeLessThan(2000);
  expect([refusals[0]!.line, refusals[0]!.column]).toEqual([line, column]);
  expect(message).toContain(about);
  expect(message.length).toBeLessThan(3000);
  expect(({} as Record<string, unknown>).polluted).toBeUndefined();
});

test('several faults that leave the rest readable are told together', () => {
  const { refusals } = refusedText('a: 1\na: 2\nb:\n  <<: 1\n  constructor: 2\n');
  expect(refusals.map(({ line, read }) => [line, read])).toEqual([
    [2, 'a'],
    [4, '<<'],
    [5, 'constructor'],
  ]);
});

test('fifty faults are enough', () => {
  const { refusals, message } = refusedText(many(200, () => 'a: 1'));
  expect(refusals).toHaveLength(50);
  expect(message).toContain('Reading stopped after 50 refusals');
});

test('forty levels and quarter of a million values are read', { timeout: 30_000 }, () => {
  for (const inside of ['', 'x']) {
    expect(plain(`${'['.repeat(40)}${inside}${']'.repeat(40)}`)).toBeDefined();
    refusedText(`${'['.repeat(41)}${inside}${']'.repeat(41)}`);
  }
  const nested = (levels: number) => many(levels, (i) => `${' '.repeat(i)}k:`) + ' x';
  expect(plain(nested(40))).toBeDefined();
  refusedText(nested(41));
  const root = placed(many(50_000, (i) => `k${i}: [1, 2, x]`));
  expect(root.kind === 'map' && root.entries.length).toBe(50_000);
});

/** Texts, numbers and words such as a file may hold. */
const fit = (text: string) => unseenIn(text) === undefined && text === text.normalize('NFC');
const letters = fc.constantFrom(...'aZ09 .:,-#\'"&*!|>%@`{}[]?=~\\/<µ°Ωé泵\n\t'.split(''));
const texts = fc.oneof(
  fc.string({ unit: letters, maxLength: 40 }).filter(fit),
  fc.string({ unit: 'grapheme', maxLength: 120 }).filter(fit),
  fc.constantFrom(
    'yes',
    'no',
    'null',
    '~',
    'true',
    '012',
    '1e3',
    '0x1F',
    '.5',
    '<<',
    '---',
    '...',
    '- a',
    'a: b',
    ' a ',
  ),
);
const keys = texts.filter((text) => reservedName(text, true) === undefined);
const data = fc.letrec((tie) => ({
  any: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    texts,
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.integer(),
    fc.boolean(),
    fc.constant(null),
    fc.array(tie('any'), { maxLength: 5 }),
    fc.dictionary(keys, tie('any'), { maxKeys: 5 }),
  ),
})).any;

test('law: plain data written as YAML reads back the same, in block style, in flow style and as JSON', () => {
  fc.assert(
    fc.property(data, (value) => {
      const styles = [stringify(value), stringify(value, { collectionStyle: 'flow' }), JSON.stringify(value)];
      for (const text of styles) expect(plainOf(placed(text)), text).toEqual(withoutPrototypes(value));
    }),
    { numRuns: 500 },
  );
});

function withoutPrototypes(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutPrototypes);
  if (typeof value !== 'object' || value === null) return Object.is(value, -0) ? 0 : value;
  const entries = Object.entries(value).map(([key, each]) => [key, withoutPrototypes(each)]);
  return Object.assign(Object.create(null), Object.fromEntries(entries));
}

test('law: whatever the text, there comes a tree or a refusal with a place', () => {
  const noise = fc.string({
    unit: fc.oneof(letters, fc.constantFrom('  ', '\n', ': ', '- ', '\n  ', '"', '|\n')),
    maxLength: 80,
  });
  fc.assert(
    fc.property(noise, (text) => {
      try {
        placed(text);
      } catch {
        const [refusal] = refusedText(text).refusals;
        expect(refusal!.line).toBeLessThanOrEqual(text.split('\n').length);
        expect(refusal!.expected).not.toBe('');
      }
    }),
    { numRuns: 5000 },
  );
});

interface SourceTexts {
  readonly madeBy: string;
  readonly cases: readonly { readonly yaml: string; readonly texts: unknown }[];
}

// Independent: the texts of scalars as another YAML reader sees them (evidence/yaml/source-texts.py).
const stored = JSON.parse(
  readFileSync(new URL('../../../evidence/yaml/source-texts.json', import.meta.url), 'utf8'),
) as SourceTexts;

test.each(stored.cases)('independent: what was typed, as PyYAML reads it: $yaml', ({ yaml, texts: expected }) => {
  expect(JSON.parse(JSON.stringify(typedOf(placed(yaml))))).toEqual(expected);
});
