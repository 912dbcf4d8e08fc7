import { openXlsx, saveXlsx } from 'hucre/xlsx';
import { expect } from 'vitest';
import { roundTrips } from '../import/round-trip-places.ts';
import { importTable } from '../import.ts';
import { issue } from '../issue.ts';
import { done, pump, pumpPath, world } from './house.ts';

type World = ReturnType<typeof world>;
export const kinds = roundTrips.map((each) => each.kind);
const csvOf: Readonly<Record<string, string>> = {
  'instrument-list': 'instruments',
  'cable-schedule': 'cables',
  'alarm-register': 'alarms',
};
/** The tables of the demo plant, or of another at its place, issued into `out`. */
export async function issued(plant = pump()): Promise<World> {
  const surroundings = world({ [pumpPath]: plant });
  await done(
    issue,
    { plant: pumpPath, out: 'out', preliminary: false, documents: kinds, forms: ['xlsx', 'csv'] },
    surroundings,
  );
  return surroundings;
}

export const read = (surroundings: World, path: string) => new TextDecoder().decode(surroundings.files.get(path));
export const workbookOf = (kind: string) => `out/revision-A/${kind}.xlsx`;
export const csvPath = (kind: string) => `out/revision-A/tables/${kind}/${csvOf[kind]}.csv`;

/** Types into a cell of a workbook as a spreadsheet would save it. */
export async function typed(
  surroundings: World,
  kind: string,
  cells: Readonly<Record<string, string | number>>,
  row: (names: string) => boolean,
) {
  const book = await openXlsx(surroundings.files.get(workbookOf(kind))!);
  const { rows } = book.sheets[0]!;
  const at = rows.findIndex((each, index) => index > 0 && row(each.slice(0, 2).join(' ')));
  expect(at).toBeGreaterThan(0);
  for (const [head, value] of Object.entries(cells)) {
    const column = rows[0]!.indexOf(head);
    expect(column, head).toBeGreaterThanOrEqual(0);
    rows[at]![column] = value;
    book.sheets[0]!.cells?.delete(`${at},${column}`);
  }
  surroundings.files.set('edited.xlsx', await saveXlsx(book));
}

interface Told {
  readonly is: string;
  readonly cell: string;
  readonly of: string;
  readonly path?: readonly string[];
  readonly yaml?: string;
  readonly words?: string;
}

export async function imported(surroundings: World, table: string, given: object = {}) {
  const outcome = await done(importTable, { plant: pumpPath, table, apply: false, ...given }, surroundings);
  const json = JSON.parse(JSON.stringify(outcome.json)) as {
    cells: Told[];
    written: boolean;
    carriesExported: boolean;
    rowsMissing: string[];
    headsUnknown: string[];
    headsMissing: string[];
    tabsNotRead: string[];
  };
  return { outcome, json, cells: json.cells };
}
