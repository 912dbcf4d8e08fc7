import { openXlsx, saveXlsx } from 'hucre/xlsx';
import { expect, test } from 'vitest';
import { csvPath, imported, issued, read, typed, workbookOf } from '../testing/edited-table.ts';
import { flowing, pump, pumpPath } from '../testing/house.ts';

type World = Awaited<ReturnType<typeof issued>>;
const loop = 'P-301/pump-drive-end-loop';

/** The first tab of an exported workbook changed as somebody might, and saved. */
async function bookWith(
  surroundings: World,
  kind: string,
  change: (
    rows: (string | number | boolean | Date | null | undefined)[][],
    book: Awaited<ReturnType<typeof openXlsx>>,
  ) => void,
): Promise<void> {
  const book = await openXlsx(surroundings.files.get(workbookOf(kind))!);
  const [sheet] = book.sheets;
  sheet!.cells?.clear();
  change(sheet!.rows as never, book);
  surroundings.files.set('edited.xlsx', await saveXlsx(book));
}

/** The text of an exported table with some of it replaced. */
function textWith(surroundings: World, kind: string, from: string | RegExp, to: string): void {
  const before = read(surroundings, csvPath(kind));
  const after = before.replace(from, to);
  expect(after).not.toBe(before);
  surroundings.files.set('edited.csv', new TextEncoder().encode(after));
}

async function untouched(surroundings: World, table: string) {
  const told = await imported(surroundings, table, { apply: true });
  expect(told.json.written).toBe(false);
  expect(read(surroundings, pumpPath)).toBe(pump());
  return told;
}

const wrong: readonly (readonly [string, string, string, string, string])[] = [
  ['a value of another dimension', 'instrument-list', 'Surface', '65 mm', 'temperature'],
  ['a value of another dimension', 'alarm-register', 'Set at, unit', 'm', 'detector'],
  ['another unit than the head says', 'cable-schedule', 'Length, m', '85 ft', 'One of them is wrong'],
  ['a date', 'instrument-list', 'Location', '20-Apr', 'reads as a date'],
  ['a date', 'instrument-list', 'Direction', '4/20/2026', 'reads as a date'],
  ['a date', 'cable-schedule', 'Apart by', '2026-04-20 00:00:00', 'reads as a date'],
  ['a formula', 'instrument-list', 'Surface', '=B2', 'formula'],
];

test.each(wrong)(
  'negative: %s in %s, %s, is told as what it is and not applied',
  async (_, kind, head, value, words) => {
    const surroundings = await issued();
    await typed(
      surroundings,
      kind,
      { [head]: value },
      (names) => /loop(?:\/C1| baseline| LPV-25)?/.test(names) && !names.endsWith('zero'),
    );
    const { cells } = await untouched(surroundings, 'edited.xlsx');
    expect(cells.map((each) => each.is)).toEqual(['refused']);
    expect(cells[0]!.words).toContain(words);
  },
);

test('negative: a cell that holds a date and a cell that holds a formula are told by their place', async () => {
  const surroundings = await issued();
  await bookWith(surroundings, 'cable-schedule', (rows, book) => {
    const row = rows.findIndex((each) => String(each[0]).startsWith(loop));
    rows[row]![5] = new Date('2026-04-20T00:00:00Z');
    book.sheets[0]!.cells = new Map([
      [`${row},5`, { value: new Date('2026-04-20T00:00:00Z'), type: 'date', style: { numFmt: 'dd-mmm' } }],
      [`${row},10`, { value: 400, type: 'formula', formula: '200*2', formulaResult: 400 }],
    ] as never);
  });
  const { cells } = await untouched(surroundings, 'edited.xlsx');
  expect(cells.map((each) => [each.cell, each.is])).toEqual([
    ['F3', 'refused'],
    ['K3', 'refused'],
  ]);
  expect(cells[0]!.words).toContain('date');
  expect(cells[1]!.words).toContain('formula');
});

test('negative: a tag nobody knows, in a workbook and in a text', async () => {
  const surroundings = await issued();
  await bookWith(surroundings, 'cable-schedule', (rows) => {
    rows.push([`${loop}/C9`, 'LPV-25', 'AI-16', 'TSP', '', 40]);
  });
  const book = await untouched(surroundings, 'edited.xlsx');
  expect(book.cells.map((each) => [each.of, each.is])).toEqual([[`${loop}/C9`, 'refused']]);
  expect(book.cells[0]!.words).toContain('a table makes none');
  textWith(surroundings, 'instrument-list', loop, 'P-301/pump-drive-end-lop');
  const text = await untouched(surroundings, 'edited.csv');
  expect(text.cells.map((each) => [each.of, each.is])).toEqual([['P-301/pump-drive-end-lop', 'refused']]);
  expect(text.cells[0]!.words).toContain(`Did you mean '${loop}'?`);
  expect(text.json.rowsMissing).toEqual([loop]);
});

test('negative: a row that stands twice is refused the second time, whatever it says', async () => {
  const surroundings = await issued();
  await bookWith(surroundings, 'cable-schedule', (rows) => {
    const row = rows.find((each) => String(each[0]).startsWith(loop))!;
    rows.push(row.with(5, 90));
  });
  const { cells } = await untouched(surroundings, 'edited.xlsx');
  expect(cells.map((each) => [each.cell, each.is])).toEqual([['A4', 'refused']]);
  expect(cells[0]!.words).toContain('Which one holds?');
});

test('negative: leading zeros that a spreadsheet took away are told, of a name and of a text', async () => {
  const plant = pump().replaceAll('pump-drive-end-loop', '007').replace('direction: vertical', 'direction: "010"');
  const surroundings = await issued(plant);
  const zeros = read(surroundings, csvPath('instrument-list')).replace('P-301/007,', 'P-301/7,');
  surroundings.files.set('edited.csv', new TextEncoder().encode(zeros));
  const { cells } = await imported(surroundings, 'edited.csv', { apply: true });
  expect(cells.map((each) => [each.of, each.is])).toEqual([['P-301/7', 'refused']]);
  await typed(surroundings, 'instrument-list', { Direction: 10 }, (names) => names.includes('007'));
  const book = await imported(surroundings, 'edited.xlsx', { apply: true });
  expect(book.cells.map((each) => [each.is, each.path?.at(-1)])).toEqual([['refused', 'direction']]);
  expect(book.cells[0]!.words).toContain('leading zeros');
  expect(read(surroundings, pumpPath)).toBe(plant);
});

test('negative: a row left out, a column left out, a column without a head and another tab are each named', async () => {
  const surroundings = await issued();
  await bookWith(surroundings, 'cable-schedule', (rows, book) => {
    rows.splice(1, 1);
    for (const row of rows) row.splice(9, 1);
    rows[1]![14] = 'ask the electrician';
    book.sheets.splice(1, 0, { name: 'My notes', rows: [['a'], ['b']] } as never);
  });
  const { json, outcome, cells } = await untouched(surroundings, 'edited.xlsx');
  expect(cells).toEqual([]);
  expect(json.rowsMissing).toEqual(['P-301/pump-drive-end-horizontal/C1']);
  expect(json.headsMissing).toEqual(['Runs along']);
  expect(json.headsUnknown.join()).toMatch(/column [A-Z], which has no head/);
  expect(json.tabsNotRead).toEqual(['My notes']);
  expect(flowing(outcome)).toContain('Other tabs, from which nothing is read: My notes.');
});

test('negative: a head that stands twice is refused: nobody can tell which column holds', async () => {
  const surroundings = await issued();
  await bookWith(surroundings, 'cable-schedule', (rows) => {
    for (const row of rows) row.push(row[5]);
    rows[1]![rows[1]!.length - 1] = 44;
  });
  const { outcome } = await imported(surroundings, 'edited.xlsx', { apply: true });
  expect(outcome.exit).toBe(2);
  expect(flowing(outcome)).toContain("the head 'Length, m' stands twice");
  expect(read(surroundings, pumpPath)).toBe(pump());
});

/** Exported 85 m; what the table says, what the plant says now, what becomes of it, and what the plant says at last. */
const threeWays: readonly (readonly [number, string, string, string, string])[] = [
  [85, '85 m', 'nothing', '85 m', '85 m'],
  [90, '85 m', 'change', '90 m', '90 m'],
  [85, '87 m', 'nothing', '87 m', '87 m'],
  [87, '87 m', 'as the plant has it', '87 m', '87 m'],
  [90, '87 m', 'conflict', '87 m', '90 m'],
];

test.each(threeWays)(
  'three ways: exported 85 m, edited to %d, the plant at %s: %s',
  async (edited, now, is, applied, overruled) => {
    for (const [overrule, last] of [
      [false, applied],
      [true, overruled],
    ] as const) {
      const surroundings = await issued();
      await typed(surroundings, 'cable-schedule', { 'Length, m': edited }, (names) => names.includes('loop'));
      const changed = pump({ 'value: 85 m': `value: ${now}` });
      surroundings.files.set(pumpPath, new TextEncoder().encode(changed));
      const { cells, outcome } = await imported(surroundings, 'edited.xlsx', { apply: true, overrule });
      expect(cells.map((each) => each.is)).toEqual(is === 'nothing' ? [] : [is]);
      expect(outcome.exit).toBe(is === 'conflict' && !overrule ? 1 : 0);
      expect(/cable-length: .*?(\d+ m)/.exec(read(surroundings, pumpPath).split('pump-drive-end-loop:')[1]!)![1]).toBe(
        last,
      );
    }
  },
);
