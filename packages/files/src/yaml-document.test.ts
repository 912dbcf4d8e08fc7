import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { stringify } from 'yaml';
import { hostileFiles, many } from './hostile-files.ts';
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

test.each(hostileFiles)(
  'negative: %s is refused with its place, and in bounded time',
  { timeout: 30_000 },
  (_, textOf, line, column, about) => {
    const text = textOf();
    const { refusals, message } = refusedText(text);
    expect([refusals[0]!.line, refusals[0]!.column]).toEqual([line, column]);
    expect(message).toContain(about);
    expect(message.length).toBeLessThan(3000);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  },
);

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

test('forty levels and eighty thousand values are read', { timeout: 30_000 }, () => {
  for (const inside of ['', 'x']) {
    expect(plain(`${'['.repeat(40)}${inside}${']'.repeat(40)}`)).toBeDefined();
    refusedText(`${'['.repeat(41)}${inside}${']'.repeat(41)}`);
  }
  const nested = (levels: number) => `${many(levels, (i) => `${' '.repeat(i)}k:`)} x`;
  expect(plain(nested(40))).toBeDefined();
  refusedText(nested(41));
  const root = placed(many(20_000, (i) => `k${i}: [1, 2, x]`));
  expect(root.kind === 'map' && root.entries.length).toBe(20_000);
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
    // JSON has no -0.
    fc.double({ noNaN: true, noDefaultInfinity: true }).filter((value) => !Object.is(value, -0)),
    fc.integer(),
    fc.boolean(),
    fc.constant(null),
    fc.array(tie('any'), { maxLength: 5 }),
    fc.dictionary(keys, tie('any'), { maxKeys: 5 }),
  ),
})).any;

// In styles that the library writes rightly: ' \n' as a '|' text and ':\na' as a plain text in flow style are not among them.
const styles = [
  { blockQuote: false },
  { defaultStringType: 'QUOTE_SINGLE', blockQuote: false },
  { defaultStringType: 'QUOTE_DOUBLE' },
  { defaultStringType: 'QUOTE_DOUBLE', collectionStyle: 'flow' },
] as const;

test('law: plain data written as YAML or JSON reads back the same, whatever the style', () => {
  fc.assert(
    fc.property(data, (value) => {
      for (const text of [JSON.stringify(value), ...styles.map((style) => stringify(value, style))]) {
        expect(plainOf(placed(text)), text).toEqual(withoutPrototypes(value));
      }
    }),
    { numRuns: 500 },
  );
});

function withoutPrototypes(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutPrototypes);
  if (typeof value !== 'object' || value === null) return value;
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

// Independent: the texts of scalars as another YAML reader sees them (evidence/yaml/generate.py).
const stored = JSON.parse(
  readFileSync(new URL('../../../evidence/yaml/source-texts.json', import.meta.url), 'utf8'),
) as SourceTexts;

test.each(stored.cases)('independent: what was typed, as PyYAML reads it: $yaml', ({ yaml, texts: expected }) => {
  expect(JSON.parse(JSON.stringify(typedOf(placed(yaml))))).toEqual(expected);
});
