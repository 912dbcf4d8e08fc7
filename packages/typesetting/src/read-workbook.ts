import { Refusal } from '@soundpost/core';
import { type CellValue, readXlsx } from 'hucre/xlsx';
import { refuseUnbounded } from './bounded-archive.ts';
import { exportedHead } from './workbook.ts';

/** What stands in a cell, as text; a number keeps that it was one, so that no decimal sign is in doubt. */
export interface BookCell {
  readonly text: string;
  readonly number: boolean;
  /** Why nothing may be taken from it. */
  readonly refused?: string;
}

export interface BookSheet {
  readonly name: string;
  readonly rows: readonly (readonly BookCell[])[];
  /** What was exported in each row, where it still stands there; the first row is the head. */
  readonly exported: readonly (readonly string[] | undefined)[];
}

const mostRows = 20_000;
const mostColumns = 200;
const mostMerges = 1000;

/** Reads the tabs of a workbook, bounded. Throws Refusal for what is no workbook or holds too much. */
export async function readWorkbook(bytes: Uint8Array): Promise<readonly BookSheet[]> {
  await refuseUnbounded(bytes);
  const book = await readXlsx(bytes, { maxRows: mostRows + 1 }).catch((error: unknown) => {
    throw new Refusal({
      read: `a workbook that cannot be read (${error instanceof Error ? error.message : 'no reason given'})`,
      expected: 'an XLSX workbook',
      suggestion: 'Save it again from the spreadsheet.',
    });
  });
  return book.sheets.map((sheet) => {
    const widest = sheet.rows.reduce((most, row) => Math.max(most, row.length), 0);
    if (sheet.rows.length > mostRows || widest > mostColumns) {
      throw new Refusal({
        read: `a tab of ${sheet.rows.length} rows and ${widest} columns`,
        expected: `at most ${mostRows} rows and ${mostColumns} columns`,
      });
    }
    if ((sheet.merges ?? []).length > mostMerges) {
      throw new Refusal({ read: 'a tab of merged cells', expected: `at most ${mostMerges} of them` });
    }
    const kept = sheet.rows[0]?.indexOf(exportedHead) ?? -1;
    const merged = (row: number, column: number) =>
      (sheet.merges ?? []).some(
        (each) => row >= each.startRow && row <= each.endRow && column >= each.startCol && column <= each.endCol,
      );
    const cell = (value: CellValue | undefined, row: number, column: number): BookCell => {
      const known = sheet.cells?.get(`${row},${column}`);
      if (known?.formula !== undefined || known?.formulaType !== undefined)
        return refused(value, 'A formula stands here, not its value. Paste it as a value.');
      if (merged(row, column)) return refused(value, 'The cell is merged with others. Part them, and fill each.');
      if (value instanceof Date) return refused(value, 'The spreadsheet made a date of it. Format the cell as text.');
      if (typeof value === 'boolean') return refused(value, 'A true or false stands here, not a value.');
      return { text: textOf(value), number: typeof value === 'number' };
    };
    return {
      name: sheet.name,
      rows: sheet.rows.map((row, at) =>
        row.flatMap((value, column) => (column === kept ? [] : [cell(value, at, column)])),
      ),
      exported: sheet.rows.map((row) => (kept < 0 ? undefined : exportedIn(row[kept]))),
    };
  });
}

function refused(value: CellValue | undefined, words: string): BookCell {
  return { text: textOf(value), number: false, refused: words };
}

function textOf(value: CellValue | undefined): string {
  if (value === null || value === undefined) return '';
  return (value instanceof Date ? value.toISOString() : String(value)).replace(/[\p{Zs}\t]+/gu, ' ').trim();
}

function exportedIn(value: CellValue | undefined): readonly string[] | undefined {
  try {
    const read: unknown = JSON.parse(String(value));
    return Array.isArray(read) ? read.map((each) => textOf(each as CellValue)) : undefined;
  } catch {
    return undefined;
  }
}
