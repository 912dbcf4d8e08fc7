import type { Plant, Showing } from '@soundpost/core';
import { pastedCells, readsTwoWays, yamlAt } from '@soundpost/files';
import { noOrigin } from '../origin.ts';
import { areHeads, columnOf } from './heads.ts';
import { readRow } from './paste-row.ts';
import { isQuantity } from './paste-value.ts';
import type { PasteAt, PasteChoices, PasteColumn, PasteView, Placing } from './views.ts';

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
  const parted = text.length > mostCharacters ? [] : pastedCells(text);
  const heads = choices.heads ?? areHeads(parted[0] ?? []);
  const { at } = choices;
  const mayPlace = at !== undefined && at.points.length > 0 && at.fields.length > 0;
  const placing = mayPlace ? (choices.placing ?? placingOf(at, heads, parted[0] ?? [])) : 'by name';
  // What goes cell by cell came from a spreadsheet: there a comma is part of a text.
  const cells = placing === 'by place' && !heads && parted.length > 0 ? pastedCells(text, '\t') : parted;
  const fields = choices.fields ?? (heads || !mayPlace ? undefined : placed(at, placing));
  const columns = columnsOf(cells, heads, fields);
  const rows = heads ? cells.slice(1) : cells;
  const doubtful = rows.flatMap((row) =>
    row.filter((cell, index) => isQuantity(columns[index]?.field ?? 'point') && readsTwoWays(cell)),
  );
  const nothing: PasteView = {
    heads,
    placing,
    mayPlace,
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
      : unreadColumns(columns, rows.length, placing);
  if (unread !== undefined) return { ...nothing, unread };
  const writings = {
    table: choices.decimal ?? (doubtful.length > 0 ? undefined : ('point' as const)),
    file: yamlAt(file, ['decimals']) === 'comma' ? ('comma' as const) : ('point' as const),
  };
  const origin = choices.origin ?? noOrigin;
  const named = new Map<string, number>();
  const read = rows.flatMap((row, index) => {
    if (row.every((cell) => cell === '')) return [];
    const place = placing === 'by place' ? (at!.points[index] ?? '') : undefined;
    return [readRow(row, index + (heads ? 2 : 1), { plant, columns, writings, showing, origin }, named, place)];
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

/** A table whose heads or first cells name points goes to those; any other block goes where the hand is. */
function placingOf({ fields }: PasteAt, heads: boolean, first: readonly string[]): Placing {
  const names = heads ? first.some((head) => columnOf(head).field === 'point') : fields[0] === 'point';
  return names ? 'by name' : 'by place';
}

/** What the columns of a block are, from the cell it is put at; the names are not asked where the place tells the point. */
function placed({ fields }: PasteAt, placing: Placing): NonNullable<PasteChoices['fields']> {
  return fields.map((field) =>
    field === undefined || (placing === 'by place' && (field === 'point' || field === 'machine')) ? 'left out' : field,
  );
}

function unreadColumns(columns: readonly PasteColumn[], rows: number, placing: Placing): string | undefined {
  if (rows === 0) return columns.length === 0 ? 'There is nothing to read yet.' : 'Below the heads stands no row.';
  const fields = columns.flatMap(({ field }) => field ?? []);
  const twice = fields.find((field, index) => fields.indexOf(field) !== index);
  if (twice !== undefined) return `Two columns are read as ${twice.replaceAll('-', ' ')}. Leave one of them out.`;
  if (placing === 'by name' && !fields.includes('point')) return 'No column names the point. Say below which one does.';
  return undefined;
}
