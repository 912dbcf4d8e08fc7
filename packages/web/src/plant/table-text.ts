import type { PointRow } from '../engine/views.ts';
import { columns } from './columns.ts';

/** Points as a spreadsheet takes them, and as they can be pasted back: heads, then a row a point. */
export function tableText(rows: readonly PointRow[]): string {
  const heads = ['Machine', ...columns.map((column) => column.title)];
  const lines = rows.map((row) => [row.machine, ...columns.map((column) => column.text(row))]);
  return [heads, ...lines].map((cells) => cells.map(cellText).join('\t')).join('\n');
}

/** A text that begins like a formula would be run by a spreadsheet; an apostrophe keeps it a text there. */
function cellText(text: string): string {
  const inert = /^[=+@]/.test(text) || /^-(?!\d)/.test(text) ? `'${text}` : text;
  return /[\t\n"]/.test(inert) ? `"${inert.replaceAll('"', '""')}"` : inert;
}
