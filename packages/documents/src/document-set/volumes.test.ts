import fc from 'fast-check';
import { expect, test } from 'vitest';
import { madeSheet } from './made-sheet.ts';
import { partsOf } from './parts.ts';
import { type Block, type DocumentRecord, type SetTable, tablesOf } from './record.ts';
import { volumesOf } from './volumes.ts';

const issue = {
  plant: 'Works',
  owner: '',
  project: '',
  revision: 'A',
  date: '',
  preparedBy: '',
  contentHash: 'a1b2',
};

function record(sheets: number, made: { count: number }): DocumentRecord {
  return {
    kind: 'chain-calculations',
    title: 'Chain calculations',
    orientation: 'portrait',
    issue,
    sheets: Array.from({ length: sheets }, (_, at) =>
      madeSheet(`Sheet ${at}`, [made], (each) => {
        each.count++;
        return [];
      }),
    ),
  };
}

test('law: every sheet stands in one volume, in order, and none is made to find out', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 120 }), (sheets, most) => {
      const made = { count: 0 };
      const volumes = volumesOf(record(sheets, made), most);
      expect(volumes.flatMap((each) => each.sheets.map(({ title }) => title))).toEqual(
        Array.from({ length: sheets }, (_, at) => `Sheet ${at}`),
      );
      for (const each of volumes) expect(each.sheets.length).toBeLessThanOrEqual(most);
      expect(made.count).toBe(0);
    }),
  );
});

test('a document that is short enough is left as it is; a volume says which it is', () => {
  const short = record(2, { count: 0 });
  expect(volumesOf(short, 2)).toEqual([short]);
  expect(volumesOf(record(3, { count: 0 }), 2).map((each) => each.title)).toEqual([
    'Chain calculations, volume 1 of 2',
    'Chain calculations, volume 2 of 2',
  ]);
});

function tableOf(rows: number, columns: number): SetTable {
  return {
    is: 'table',
    name: 'table',
    caption: 'A table',
    columns: Array.from({ length: columns }, (_, at) => ({ head: `${at}`, kind: 'text', width: 1 })),
    rows: Array.from({ length: rows }, (_, row) =>
      Array.from({ length: columns }, () => ({ is: 'text', text: `${row}` })),
    ),
    empty: '',
  };
}

test('law: in parts every row and entry stands once, in order, and no part holds more than was said', () => {
  const block = fc.oneof(
    fc
      .record({ rows: fc.nat(60), columns: fc.integer({ min: 1, max: 6 }) })
      .map(({ rows, columns }): Block => tableOf(rows, columns)),
    fc.nat(40).map((count): Block => ({ is: 'list', entries: Array.from({ length: count }, (_, at) => `${at}`) })),
    fc.constant<Block>({ is: 'heading', text: 'Heading' }),
  );
  const sheets = fc.array(
    fc.array(block, { maxLength: 6 }).map((blocks) => ({ title: 'Sheet', blocks })),
    { minLength: 1, maxLength: 5 },
  );
  const said = (records: readonly DocumentRecord[]) => ({
    rows: records.flatMap(tablesOf).flatMap(({ rows }) => rows),
    entries: records.flatMap((each) =>
      each.sheets.flatMap(({ blocks }) => blocks.flatMap((one) => (one.is === 'list' ? one.entries : []))),
    ),
  });
  fc.assert(
    fc.property(sheets, fc.integer({ min: 30, max: 120 }), (all, most) => {
      const whole = { ...record(1, { count: 0 }), sheets: all };
      const parts = partsOf(whole, most);
      expect(said(parts)).toEqual(said([whole]));
      for (const each of parts) {
        const cells = tablesOf(each).reduce((sum, { rows, columns }) => sum + rows.length * columns.length, 0);
        expect(cells).toBeLessThanOrEqual(most);
      }
    }),
  );
});
