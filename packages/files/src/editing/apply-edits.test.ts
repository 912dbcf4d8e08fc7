import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { applyEdits, yamlAt } from './apply-edits.ts';
import type { Edit } from './edit.ts';

function made(text: string, ...edits: readonly Edit[]): string {
  const { text: next, undo } = applyEdits(text, edits);
  expect(applyEdits(next, undo).text, 'undone').toBe(text);
  return next;
}

test.each<[string, string, Edit, string]>([
  ['a value, its comment kept', 'a: 1.50   # keep\nb: "x"\n', { path: ['a'], yaml: '2' }, 'a: 2   # keep\nb: "x"\n'],
  [
    'a value inside braces',
    'a: { value: 160 kW, source: plate }\n',
    { path: ['a', 'value'], yaml: '200 kW' },
    'a: { value: 200 kW, source: plate }\n',
  ],
  [
    'a text with a comma inside braces',
    'a: { b: 1 }\n',
    { path: ['a', 'b'], yaml: 'one, two' },
    'a: { b: "one, two" }\n',
  ],
  [
    'a block inside braces',
    'a: { b: 1 }\n',
    { path: ['a', 'b'], yaml: 'c: 012\nd:\n  - x' },
    'a: { b: { c: 012, d: [x] } }\n',
  ],
  ['a new key', 'a:\n  b: 1 # one\n\nc: 2\n', { path: ['a', 'd'], yaml: '3' }, 'a:\n  b: 1 # one\n  d: 3\n\nc: 2\n'],
  [
    'a new key before another',
    'a: 1\n# about b\nb: 2\n',
    { path: ['x'], yaml: '3', before: 'a' },
    'x: 3\na: 1\n# about b\nb: 2\n',
  ],
  ['mappings on the way', 'a: 1\n', { path: ['m', 'P-1', 'title'], yaml: 'x' }, 'a: 1\nm:\n  P-1:\n    title: x\n'],
  [
    'a block behind a key',
    'a:\n  b: 1 # c\n  e: 2\n',
    { path: ['a', 'b'], yaml: 'x: 1\ny: 2' },
    'a:\n  b: # c\n    x: 1\n    y: 2\n  e: 2\n',
  ],
  ['a value for a block', 'a: # c\n  b: 1\n  d: 2\ne: 3\n', { path: ['a'], yaml: '5' }, 'a: 5 # c\ne: 3\n'],
  [
    'a block for a block',
    'a:\n    b: 1\n    d: 2\ne: 3\n',
    { path: ['a'], yaml: 'x:\n  y: 1' },
    'a:\n    x:\n      y: 1\ne: 3\n',
  ],
  ['a key less', 'a: 1\nb: 2 # two\nc: 3\n', { path: ['b'], yaml: undefined }, 'a: 1\nc: 3\n'],
  ['the last key less', 'a: 1\nb: 2', { path: ['b'], yaml: undefined }, 'a: 1'],
  ['the only key less', 'a:\n  b: 1\nc: 2\n', { path: ['a', 'b'], yaml: undefined }, 'a: {}\nc: 2\n'],
  ['a key into an empty mapping', 'a: {}\nc: 2\n', { path: ['a', 'b'], yaml: '1' }, 'a:\n  b: 1\nc: 2\n'],
  ['a key where nothing stands', 'a:\nc: 2\n', { path: ['a', 'b'], yaml: '1' }, 'a:\n  b: 1\nc: 2\n'],
  ['an element', 'l:\n- a # x\n- b\n', { path: ['l', 0], yaml: 'c' }, 'l:\n- c # x\n- b\n'],
  [
    'one element more',
    'l:\n  - a\n  - b\nm: 1\n',
    { path: ['l', 2], yaml: 'k: 1\nn: 2' },
    'l:\n  - a\n  - b\n  - k: 1\n    n: 2\nm: 1\n',
  ],
  ['one element between', 'l: [a, b]\n', { path: ['l', 1], yaml: 'c', before: 1 }, 'l: [a, c, b]\n'],
  ['an element less', 'l: [a, b, c]\n', { path: ['l', 1], yaml: undefined }, 'l: [a, c]\n'],
  [
    'the first of a mapping in a list',
    'l:\n  - a: 1\n    b: 2\n',
    { path: ['l', 0, 'a'], yaml: undefined },
    'l:\n  - b: 2\n',
  ],
  [
    'a text of several lines',
    'a:\n  b: 1 # c\n  d: 2\n',
    { path: ['a', 'b'], yaml: '|\n  one\n  two' },
    'a:\n  b: | # c\n    one\n    two\n  d: 2\n',
  ],
  ['a key that must be quoted', 'a: 1\n', { path: ['012'], yaml: '2' }, "a: 1\n'012': 2\n"],
  ['into nothing', '# only words\n', { path: ['a', 'b'], yaml: '1' }, '# only words\na:\n  b: 1\n'],
  [
    'in lines that end as on Windows',
    'a:\r\n  b: 1\r\nc: 2\r\n',
    { path: ['a', 'd'], yaml: 'x: 1\ny: 2' },
    'a:\r\n  b: 1\r\n  d:\r\n    x: 1\r\n    y: 2\r\nc: 2\r\n',
  ],
])('%s', (_, text, edit, expected) => {
  expect(made(text, edit)).toBe(expected);
});

test('what stands at a path is given as an edit would put it there', () => {
  const text = 'a:\n  b:\n    c: 1 # x\n    d: [1, 2]\n  e: "q"\n';
  expect(yamlAt(text, ['a', 'b'])).toBe('c: 1 # x\nd: [1, 2]');
  expect(yamlAt(text, ['a', 'e'])).toBe('"q"');
  expect(yamlAt(text, ['a', 'z'])).toBeUndefined();
});

test('a path through a value, and a text that is no YAML, are refused', () => {
  expect(() => applyEdits('a: 1\n', [{ path: ['a', 'b'], yaml: '1' }])).toThrow("can hold 'b'");
  expect(() => applyEdits('a: [\n', [{ path: ['a'], yaml: '1' }])).toThrow('YAML that can be read');
  expect(() => applyEdits('a: 1\n', [{ path: ['a'], yaml: '{' }])).toThrow('YAML that can be read');
  expect(() => applyEdits('l: [a]\n', [{ path: ['l', 5], yaml: '1' }])).toThrow('at most 1');
});

test('an edit of the demo plant changes its own value only', () => {
  const text = readFileSync(new URL('../../../../examples/raw-water-pump/plant.yaml', import.meta.url), 'utf8');
  const next = made(text, { path: ['machines', 'P-301', 'facts', 'power', 'value'], yaml: '200 kW' });
  expect(next).toBe(text.replace('160 kW', '200 kW'));
});
