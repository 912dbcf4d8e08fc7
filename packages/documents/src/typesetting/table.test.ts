import { expect, test } from 'vitest';
import { markupOf } from './html.ts';
import { table } from './table.ts';

const figures = (markup: string) =>
  [...markup.matchAll(/<span class="figure"[^>]*>([^<]*)(?:<span class="pad">([^<]*)<\/span>)?<\/span>/g)].map(
    (each) => each[1]! + (each[2] ?? ''),
  );

test('law: in a column of numbers every decimal stands the same number of figures from the right', () => {
  const shown = ['0.05 mm/s rms', '25 mm/s rms', '\u22121.5e-6 mm/s rms', '100 mg peak'];
  const markup = markupOf(
    table({ columns: [{ head: 'Level', kind: 'measure', cell: (row: string) => row }], rows: shown }),
  );
  const afterPoint = figures(markup).map((each) => [...each.replace(/^[^.\u2008]*/u, '')].length);
  expect(figures(markup)).toHaveLength(4);
  expect(new Set(afterPoint)).toEqual(new Set([afterPoint[0]]));
});

test('a cell that is no number stands as it is, beside those that are', () => {
  const markup = markupOf(
    table({ columns: [{ head: 'x', kind: 'number', cell: (row: string) => row }], rows: ['12.5', '—', 'unknown'] }),
  );
  expect(figures(markup)).toEqual(['12.5']);
  expect(markup).toContain('<span>unknown</span>');
});

test('rows of one group stand under one heading', () => {
  const rows = [
    { rule: 'a', found: '1' },
    { rule: 'a', found: '2' },
    { rule: 'b', found: '3' },
  ];
  const markup = markupOf(
    table({ columns: [{ head: 'Found', cell: (row) => row.found }], rows, group: (row) => row.rule }),
  );
  expect(markup.match(/class="group"/g)).toHaveLength(2);
});

test('a table without rows says so instead of showing a head alone', () => {
  expect(markupOf(table({ columns: [{ head: 'x', cell: () => '' }], rows: [], empty: 'Nothing is stated.' }))).toBe(
    '<p class="empty">Nothing is stated.</p>',
  );
});
