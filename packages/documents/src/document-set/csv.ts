import type { Cell, SetTable } from './record.ts';

/**
 * A table with commas between its cells (RFC 4180). A measure takes two columns, its number and its unit, so that a
 * program reads numbers as numbers. A text that a spreadsheet would take for a formula is led by an apostrophe.
 */
export function csv(table: SetTable): string {
  const head = table.columns.flatMap(({ head: text, kind, unit }) =>
    kind === 'measure' ? [text, `${text}, unit`] : [unit === undefined ? text : `${text}, ${unit}`],
  );
  const rows = table.rows.map((row) =>
    row.flatMap((cell, at) => (table.columns[at]!.kind === 'measure' ? twoCells(cell) : [plain(cell)])),
  );
  return `${[head, ...rows].map((each) => each.map(quoted).join(',')).join('\r\n')}\r\n`;
}

function twoCells(cell: Cell): readonly [string, string] {
  return [plain(cell), cell.is === 'measure' ? cell.unit : ''];
}

function plain(cell: Cell): string {
  switch (cell.is) {
    case 'text':
      return /^[=+\-@\t\r]/.test(cell.text) ? `'${cell.text}` : cell.text;
    case 'number':
    case 'measure':
      return String(cell.value);
    case 'unknown':
      return 'unknown';
    default:
      return '';
  }
}

function quoted(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
