import type { Plant, Showing } from '@soundpost/core';
import { pastedCells, readsTwoWays, yamlAt } from '@soundpost/files';
import { areHeads, columnOf } from './heads.ts';
import { readRow } from './paste-row.ts';
import { isQuantity } from './paste-value.ts';
import type { PasteChoices, PasteColumn, PasteView } from './views.ts';

const mostRows = 6000;
const mostCharacters = 4_000_000;

/** What a pasted table says of this plant, and the edits that would make it so; nothing is changed. */
export function pasteView(
  text: string,
  choices: PasteChoices,
  plant: Plant,
  file: string,
  showing: Showing,
): PasteView {
  const cells = text.length > mostCharacters ? [] : pastedCells(text);
  const heads = choices.heads ?? areHeads(cells[0] ?? []);
  const columns = columnsOf(cells, heads, choices.fields);
  const rows = heads ? cells.slice(1) : cells;
  const doubtful = rows.flatMap((row) =>
    row.filter((cell, index) => isQuantity(columns[index]?.field ?? 'point') && readsTwoWays(cell)),
  );
  const nothing: PasteView = {
    heads,
    columns,
    asksDecimal: doubtful[0],
    decimal: choices.decimal,
    rows: [],
    refusals: 0,
    edits: [],
    label: '',
    unread: undefined,
  };
  const unread =
    text.length > mostCharacters || rows.length > mostRows
      ? `At most ${mostRows} rows are read at once. Paste the table in parts.`
      : unreadColumns(columns, rows.length);
  if (unread !== undefined) return { ...nothing, unread };
  const writings = {
    table: choices.decimal ?? (doubtful.length > 0 ? undefined : ('point' as const)),
    file: yamlAt(file, ['decimals']) === 'comma' ? ('comma' as const) : ('point' as const),
  };
  const named = new Map<string, number>();
  const read = rows.flatMap((row, index) => {
    if (row.every((cell) => cell === '')) return [];
    return [readRow(row, index + (heads ? 2 : 1), { plant, columns, writings, showing }, named)];
  });
  const fates = read.map(({ row }) => row.fate);
  const count = (fate: string) => fates.filter((each) => each === fate).length;
  return {
    ...nothing,
    rows: read.map(({ row }) => row),
    refusals: read.reduce(
      (sum, { row }) =>
        sum + (row.refused === undefined ? row.cells.filter((cell) => cell.refused !== undefined).length : 1),
      0,
    ),
    edits: read.flatMap((each) => each.edits),
    label: `Paste of a table: ${count('new')} new and ${count('changed')} changed points`,
  };
}

function columnsOf(
  cells: readonly (readonly string[])[],
  heads: boolean,
  fields: PasteChoices['fields'],
): readonly PasteColumn[] {
  const count = heads ? cells[0]!.length : Math.max(0, ...cells.map((row) => row.length));
  return Array.from({ length: count }, (_, index): PasteColumn => {
    const told = heads ? columnOf(cells[0]![index]!) : { head: '', unit: undefined, field: undefined };
    const chosen = fields?.[index];
    if (chosen === undefined || chosen === told.field) return told;
    const bracketed = /[[(]\s*([^\])]*\S)\s*[\])]$/.exec(told.head)?.[1];
    return { head: told.head, unit: told.unit ?? bracketed, field: chosen === 'left out' ? undefined : chosen };
  });
}

function unreadColumns(columns: readonly PasteColumn[], rows: number): string | undefined {
  if (rows === 0) return columns.length === 0 ? 'There is nothing to read yet.' : 'Below the heads stands no row.';
  const fields = columns.flatMap(({ field }) => field ?? []);
  const twice = fields.find((field, index) => fields.indexOf(field) !== index);
  if (twice !== undefined) return `Two columns are read as ${twice.replaceAll('-', ' ')}. Leave one of them out.`;
  if (!fields.includes('point')) return 'No column names the point. Say below which one does.';
  return undefined;
}
