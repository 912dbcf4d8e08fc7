import type { BookCell } from '@soundpost/typesetting/read-workbook';

/** A table as a person hands it in: a head, rows below it, and what was exported in each where the file carries it. */
export interface EditedTable {
  /** The tab; of a text, nothing. */
  readonly name: string;
  readonly head: readonly string[];
  readonly rows: readonly EditedRow[];
  /** As the spreadsheet counts the row of the head: 1. */
  readonly headRow: number;
}

export interface EditedRow {
  readonly cells: readonly BookCell[];
  readonly exported: readonly string[] | undefined;
}

/** `C7`, as a spreadsheet calls it. */
export function cellName(row: number, column: number): string {
  const letters = column < 26 ? '' : String.fromCharCode(64 + Math.floor(column / 26));
  return `${letters}${String.fromCharCode(65 + (column % 26))}${row}`;
}

/** Rows of texts as a table; the apostrophe before what a spreadsheet would take for a formula is ours. */
export function tableOfTexts(rows: readonly (readonly string[])[]): EditedTable {
  const [head = [], ...others] = rows;
  const cell = (text: string): BookCell => ({ text: text.replace(/^'(?=[=+\-@])/, ''), number: false });
  return {
    name: '',
    head: head.map(plainHead),
    headRow: 1,
    rows: others.map((row) => ({ cells: row.map(cell), exported: undefined })),
  };
}

/** A head as it is compared: a unit of nothing leaves a comma behind. */
export function plainHead(text: string): string {
  return text.replace(/,\s*$/, '').trim();
}
