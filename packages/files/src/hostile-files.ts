/** A hostile or broken file, the place where it must be refused, and a part of the sentence that says why. */
export type Hostile = readonly [name: string, text: () => string, line: number, column: number, about: string];

export const many = (count: number, part: (index: number) => string, between = '\n') =>
  Array.from({ length: count }, (_, index) => part(index)).join(between);

const bomb = many(9, (i) => `k${i}: &a${i} [${many(9, () => (i === 0 ? 'x' : `*a${i - 1}`), ', ')}]`);

export const hostileFiles: readonly Hostile[] = [
  ['billion laughs', () => bomb, 1, 5, "read '&a0', expected a value that is said once"],
  ['an alias', () => 'a: 1\nb: *a', 2, 4, 'no YAML aliases'],
  ['a merge key', () => 'a: 1\nb:\n  <<: {c: 1}', 3, 3, 'no merge keys'],
  ['a tag', () => 'a: !!binary x', 1, 4, 'a value without a YAML tag'],
  ['an own tag', () => 'a: !shell x', 1, 4, 'a value without a YAML tag'],
  ['a directive', () => '%YAML 1.1\n---\na: 1', 1, 1, 'no YAML directives'],
  ['an explicit key', () => '? a\n: 1', 1, 1, "no '?' keys"],
  ['two documents', () => 'a: 1\n---\na: 2', 2, 1, 'one document in a file'],
  ['two documents, one ended', () => 'a: 1\n...\nb: 2', 3, 1, 'one document in a file'],
  ['a mapping as key', () => '{a: 1}: 2', 1, 1, 'a word as key'],
  ['a repeated key', () => 'a: 1\nb: 2\na: 3', 3, 1, 'each key once. It stands in line 1 already.'],
  ['a key repeated in quotes', () => 'a: 1\n"a": 2', 2, 1, 'each key once'],
  ['a key repeated in other code points', () => 'é: 1\n"e\\u0301": 2', 2, 1, 'each key once'],
  ['no key', () => 'a: 1\n: 2', 2, 1, "a key before the ':'"],
  ['__proto__', () => '__proto__: {polluted: true}', 1, 1, 'not a reserved word'],
  ['constructor', () => 'a:\n  constructor: {prototype: {polluted: true}}', 2, 3, 'not a reserved word'],
  ['a key that hides a character', () => 'P-301\u200d: 1', 1, 1, 'visible characters'],
  ['direction marks by escape', () => 'a: "x\\u202ey"', 1, 4, "read 'U+202E'"],
  ['half a character by escape', () => 'a: "\\ud800"', 1, 4, "read 'U+D800'"],
  ['NUL by escape in a key', () => '"\\0": 1', 1, 1, "read 'U+0000'"],
  ['tabs as indentation', () => 'a:\n\tb: 1', 2, 1, 'indentation by spaces'],
  ['an unterminated quote', () => 'a:\n  b: "Pump\n  c: 1', 2, 6, 'a closing "'],
  ["an unterminated '", () => "a:\n  b: 'Pump's\n  c: 1", 2, 12, "'key: value' or '- value'"],
  [
    'a quote closed by the next one',
    () => 'a:\n  b: "Pump\n    c: "160 kW"\n',
    2,
    6,
    'Was its closing quote forgotten?',
  ],
  ['an unclosed list', () => 'a: [1, 2\nb: 3', 2, 1, 'Is a closing ] or } missing?'],
  ['no space after the colon', () => 'a: 1\npower:160 kW', 2, 1, "Is the space after the ':' missing?"],
  ['two colons in a line', () => 'notes: P-301: leaking', 1, 8, 'in quotes'],
  ['a line indented too far', () => 'a:\n  b: 1\n    c: 2', 2, 6, 'The next line is indented'],
  ['a line indented too little', () => 'a:\n    b: 1\n  c: 2', 3, 1, 'Check the indentation'],
  ['10 000 levels of lists', () => '['.repeat(10_000), 1, 41, 'at most 40 levels'],
  ['10 000 levels in block style', () => `${'- '.repeat(10_000)}x`, 1, 81, 'at most 40 levels'],
  ['1 000 000 keys', () => many(1_000_000, (i) => `k${i}: ${i}`), 500_001, 1, 'at most 500000 lines'],
  [
    '1 000 000 keys in a line',
    () => `{${many(1_000_000, (i) => `k${i}: ${i}`, ',')}}`,
    1,
    2_444_445,
    'at most 500000 values',
  ],
  ['a text of 1 MB', () => `a: ${'x'.repeat(1_000_000)}`, 1, 4, 'at most 20000 characters. It has 1000000.'],
  ['a quoted text of 1 MB', () => `a: "${'x'.repeat(1_000_000)}"`, 1, 4, 'at most 20000 characters'],
  ['a block text of 1 MB', () => `a: |\n  ${'x\n  '.repeat(250_000)}`, 2, 1, 'at most 20000 characters'],
  ['a key of 1 kB', () => `${'k'.repeat(1000)}: 1`, 1, 1, 'a key of at most 200 characters'],
  ['a flood of commas', () => `[${','.repeat(300_000)}`, 1, 3, "read '[,,,"],
  ['a flood of closing marks', () => `a: 1\n${'] '.repeat(300_000)}`, 2, 1, "read '] ] ]"],
  ['a flood of comments', () => `a:\n${'  #\n'.repeat(2_000_000)}  b: 1`, 500_001, 1, 'at most 500000 lines'],
  ['a flood of quotes', () => 'a: "x\n'.repeat(100_000), 1, 4, 'a closing "'],
];
