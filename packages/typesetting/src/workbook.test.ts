import { csv, headText, tablesOf } from '@soundpost/documents/document-set';
import { strFromU8, unzipSync } from 'fflate';
import { expect, test } from 'vitest';
import { exampleNames, exampleRecords } from './testing/example-records.ts';
import { workbook } from './workbook.ts';

/** A small reader of its own: the parts of a workbook by the standard (ECMA-376), without the library that wrote it. */
function readBook(bytes: Uint8Array) {
  const files = unzipSync(bytes);
  const text = (name: string) => (files[name] === undefined ? '' : strFromU8(files[name]));
  const plain = (xml: string) =>
    xml
      .replace(/<[^>]*>/g, '')
      .replace(/&(lt|gt|quot|apos|amp|#(\d+));/g, (_, name: string, code) =>
        code === undefined ? { lt: '<', gt: '>', quot: '"', apos: "'", amp: '&' }[name]! : String.fromCodePoint(+code),
      );
  const strings = [...text('xl/sharedStrings.xml').matchAll(/<si>([\s\S]*?)<\/si>/g)].map((each) => plain(each[1]!));
  const names = [...text('xl/workbook.xml').matchAll(/<sheet [^>]*name="([^"]*)"/g)].map((each) => plain(each[1]!));
  return names.map((name, at) => {
    const sheet = text(`xl/worksheets/sheet${at + 1}.xml`);
    const cells = new Map<string, string | number>();
    for (const [, attributes, body] of sheet.matchAll(/<c ([^>]*?)(?:\/>|>([\s\S]*?)<\/c>)/g)) {
      const place = /r="([A-Z]+\d+)"/.exec(attributes!)![1]!;
      const value = /<v>([\s\S]*?)<\/v>/.exec(body ?? '')?.[1];
      const inline = /<is>([\s\S]*?)<\/is>/.exec(body ?? '')?.[1];
      if (inline !== undefined) cells.set(place, plain(inline));
      else if (value !== undefined) cells.set(place, /t="s"/.test(attributes!) ? strings[+value]! : Number(value));
    }
    return { name, cells, frozen: /<pane [^>]*state="frozen"/.test(sheet) };
  });
}

function place(row: number, column: number): string {
  const letters = column < 26 ? '' : String.fromCharCode(64 + Math.floor(column / 26));
  return `${letters}${String.fromCharCode(65 + (column % 26))}${row + 1}`;
}

test.each(exampleNames)('law: every cell of every table of %s stands in its workbook with its type', async (name) => {
  for (const record of exampleRecords(name).records) {
    const bytes = await workbook(record);
    const tables = tablesOf(record);
    expect(bytes === undefined).toBe(tables.length === 0);
    if (bytes === undefined) continue;
    const book = readBook(bytes);
    expect(book).toHaveLength(tables.length + 1);
    for (const [at, { columns, rows }] of tables.entries()) {
      const { cells, frozen } = book[at]!;
      expect(frozen).toBe(true);
      let written = 0;
      for (const [index, column] of columns.entries()) {
        expect(cells.get(place(0, written))).toBe(headText(column));
        for (const [down, row] of rows.entries()) {
          const cell = row[index]!;
          const found = cells.get(place(down + 1, written));
          if (cell.is === 'number' || cell.is === 'measure') expect(found).toBe(cell.value);
          else if (cell.is === 'text') expect(found).toBe(cell.text);
          else if (cell.is === 'unknown') expect(found).toBe('unknown');
          else expect(found ?? '').toBe('');
          if (cell.is === 'measure') expect(cells.get(place(down + 1, written + 1)) ?? '').toBe(cell.unit);
        }
        written += column.kind === 'measure' ? 2 : 1;
      }
    }
    expect([...book.at(-1)!.cells.values()]).toContain(record.issue.contentHash);
  }
});

test('law: the same record gives the same bytes twice', async () => {
  const record = exampleRecords('raw-water-pump').records[0]!;
  expect(await workbook(record)).toEqual(await workbook(record));
});

test('negative: a text that begins like a formula stays a text, in a workbook and with commas', async () => {
  const record = exampleRecords('raw-water-pump').records[0]!;
  const table = tablesOf(record)[0]!;
  const evil = { ...table, rows: [[{ is: 'text', text: '=1+1' } as const, ...table.rows[0]!.slice(1)]] };
  const sheets = [{ title: 'x', blocks: [evil] }];
  expect(readBook((await workbook({ ...record, sheets }))!)[0]!.cells.get('A2')).toBe('=1+1');
  expect(csv(evil).split('\r\n')[1]).toMatch(/^'=1\+1,/);
});
