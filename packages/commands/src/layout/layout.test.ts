import fc from 'fast-check';
import { expect, test } from 'vitest';
import { labelled } from './line.ts';
import { table } from './table.ts';
import { screenWidth } from './width.ts';
import { wrapped } from './wrap.ts';

const words = fc.array(fc.stringMatching(/^[a-zµ√/0-9.-]{1,90}$/), { maxLength: 30 }).map((each) => each.join(' '));
const signs = (text: string) => text.replace(/\s+/g, '');

test('law: a wrapped text is no wider than asked, and no sign of it is lost', () => {
  fc.assert(
    fc.property(words, fc.integer({ min: 12, max: 100 }), (text, width) => {
      const lines = wrapped(text, width, '  ');
      expect(lines.every((line) => screenWidth(line) <= width)).toBe(true);
      expect(signs(lines.join(''))).toBe(signs(text));
    }),
  );
});

test('law: a table is no wider than asked, and no sign of its cells is lost', () => {
  const rows = fc.array(fc.tuple(words, words, words), { minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(rows, fc.integer({ min: 30, max: 100 }), (cells, width) => {
      const columns = [{ head: 'a' }, { head: 'b', align: 'right' as const }, { head: 'c' }];
      const lines = table(columns, cells, width);
      expect(lines.every((line) => screenWidth(line) <= width)).toBe(true);
      const sorted = (text: string) => [...signs(text)].sort().join('');
      expect(sorted(lines.slice(2).join(''))).toBe(sorted(cells.flat().join('')));
    }),
  );
});

test('a line is not broken between a number and its unit', () => {
  expect(wrapped('at 24.77 Hz and 0.5 mm/s rms', 8)).toEqual(['at', '24.77 Hz', 'and', '0.5 mm/s', 'rms']);
});

test('a word that is too long is broken at its joints, after / before -', () => {
  expect(wrapped('pump-drive-end/element-spin', 18)).toEqual(['pump-drive-end/', 'element-spin']);
  expect(wrapped('element-spin-twice', 14)).toEqual(['element-spin-', 'twice']);
});

test('numbers of a decimal column stand with their decimal signs under one another, point or comma', () => {
  const lines = table([{ head: 'n', align: 'decimal' }], [['24.77'], ['100'], ['0.2333'], ['?']], 20);
  expect(lines.slice(2)).toEqual([' 24.77', '100', '  0.2333', '       ?']);
  const comma = table([{ head: 'n', align: 'decimal' }], [['24,77'], ['100']], 20);
  expect(comma.slice(2)).toEqual([' 24,77', '100']);
});

test('a text beside its label keeps to its column', () => {
  expect(labelled('Chain', 'ACC-100 on stud', 22, '  ', 8).map((each) => each.text)).toEqual([
    '  Chain   ACC-100 on',
    '          stud',
  ]);
});

test('signs that take two columns are counted so', () => {
  expect(screenWidth('泵A')).toBe(3);
  expect(screenWidth('e\u0301')).toBe(1);
});
