import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cellText, unknown, words } from './cells.ts';
import { gatheredPlaces } from './gathered-places.ts';
import type { SetTable } from './record.ts';
import { setTable, textColumn } from './set-table.ts';

interface Row {
  readonly at: string;
  readonly says: string;
}

const table = (rows: readonly Row[]): SetTable =>
  setTable<Row>(
    'T',
    'Told',
    [textColumn('At', ({ at }) => words(at)), textColumn('Says', ({ says }) => words(says))],
    rows,
    'nothing',
  );

/** Each place with what it is told, read back from the gathered tables as a person would. */
function readBack([told, groups]: readonly SetTable[]): ReadonlySet<string> {
  const tags = new Map<string, string[]>();
  for (const [group, , places] of groups?.rows ?? []) {
    const name = cellText(group!).replace(', continued', '');
    tags.set(name, [...(tags.get(name) ?? []), ...cellText(places!).split(', ')]);
  }
  const placesOf = (cell: string) => tags.get(cell.replace(/: \d+ places$/, '')) ?? cell.split(', ');
  return new Set(told!.rows.flatMap(([at, says]) => placesOf(cellText(at!)).map((one) => `${one} ${cellText(says!)}`)));
}

test('law: gathered rows say of every place what was said of it and nothing else, each thing once', () => {
  const row = fc.record({
    at: fc.integer({ min: 1, max: 80 }).map((n) => `P-${n}`),
    says: fc.constantFrom('a', 'b', 'c'),
  });
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 200 }), (rows) => {
      const gathered = gatheredPlaces('T', [table(rows)]);
      expect(readBack(gathered)).toEqual(new Set(rows.map(({ at, says }) => `${at} ${says}`)));
      expect(gathered[0]!.rows).toHaveLength(new Set(rows.map(({ says }) => says)).size);
    }),
  );
});

test('law: what is unknown at several places is asked of each', () => {
  const open = (of: string) => [words(of), unknown([{ of, what: 'surface temperature' }])];
  const [told] = gatheredPlaces('T', [{ ...table([]), rows: [open('P-1'), open('P-2')] }]);
  expect(told!.rows).toEqual([
    [
      words('P-1, P-2'),
      unknown([
        { of: 'P-1', what: 'surface temperature' },
        { of: 'P-2', what: 'surface temperature' },
      ]),
    ],
  ]);
});
