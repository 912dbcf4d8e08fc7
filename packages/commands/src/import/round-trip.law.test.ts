import { design as designOf } from '@soundpost/core';
import fc from 'fast-check';
import { openXlsx, saveXlsx } from 'hucre/xlsx';
import { beforeAll, describe, expect, test } from 'vitest';
import { parse, parseDocument } from 'yaml';
import { issue } from '../issue.ts';
import { plantOf, type StatedTexts } from '../plant/stated-texts.ts';
import { seed } from '../seed.ts';
import { type Column, editableColumns, type Path, tag, type Values } from '../testing/editable-columns.ts';
import { done, fileOf, pump, pumpPath, world } from '../testing/house.ts';
import { tableOfTexts } from './edited-table.ts';
import { readEdited } from './read-edited.ts';
import { roundTrips } from './round-trip-places.ts';
import { understanding } from './understanding.ts';

/** The demo plant with a wiring and a set point of its own, and remarks wherever one can stand. */
const remarked = pump({
  '        alarm:\n          baseline: { value: 1.9 mm/s rms 2-1000 Hz, status: measured, source: route data at 50 Hz }\n          delay: 3 s\n': `        wiring: { screen-earthed: cabinet, power-cable: low voltage, power-distance: 400 mm } # walked on the tray
        alarm:
          # as it ran when it was new
          baseline: 1.9 mm/s rms 2-1000 Hz   # route data
          delay:   3 s # ask the operator
          trip-delay: "2 s"
          set-points:
            early:
              does: alert
              level: 2.9 mm/s rms 2-1000 Hz
              delay: 5 s # own
              because: 'plant rule, first look' # keep
`,
  'cable-length: { value: 85 m, status: measured, source: walked on the tray }': 'cable-length: 85 m # § walked — 2×',
});
const catalogues = new Map([['generic', fileOf('packages/files/catalogues/generic.yaml')]]);
const textsOf = (plant: string): StatedTexts => ({ from: pumpPath, plant, catalogues });

const csvOf: Readonly<Record<string, string>> = {
  'instrument-list': 'instruments',
  'cable-schedule': 'cables',
  'alarm-register': 'alarms',
};

/** What a table is once it is exported. */
interface Exported {
  readonly workbook: Uint8Array;
  readonly csv: string;
  readonly rows: readonly (readonly string[])[];
}

async function exportedFrom(plant: string): Promise<ReadonlyMap<string, Exported>> {
  const surroundings = world({ [pumpPath]: plant });
  const documents = roundTrips.map((each) => each.kind);
  await done(
    issue,
    { plant: pumpPath, out: 'out', preliminary: true, documents, forms: ['xlsx', 'csv'] },
    surroundings,
  );
  return new Map(
    documents.map((kind) => {
      const csv = new TextDecoder().decode(surroundings.files.get(`out/revision-A/tables/${kind}/${csvOf[kind]}.csv`));
      const { head, rows } = tableOfTexts(
        csv
          .trimEnd()
          .split('\r\n')
          .map((line) => [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map((each) => each[1] ?? each[2]!)),
      );
      const texts = rows.map(({ cells }) => cells.map((each) => each.text));
      return [kind, { workbook: surroundings.files.get(`out/revision-A/${kind}.xlsx`)!, csv, rows: [head, ...texts] }];
    }),
  );
}

let exported: ReadonlyMap<string, Exported>;
beforeAll(async () => {
  exported = await exportedFrom(remarked);
});

/** The workbook with cells typed into, as a spreadsheet saves it. */
async function typedBook(kind: string, row: number, values: Values): Promise<Uint8Array> {
  const book = await openXlsx(exported.get(kind)!.workbook);
  const [sheet] = book.sheets;
  for (const [head, value] of Object.entries(values)) {
    const column = sheet!.rows[0]!.indexOf(head);
    expect(column, head).toBeGreaterThanOrEqual(0);
    sheet!.rows[row]![column] = value;
    sheet!.cells?.delete(`${row},${column}`);
  }
  return saveXlsx(book);
}

/** The same as a text, parted by commas, or by semicolons where the comma is the decimal sign. */
function typedText(kind: string, row: number, values: Values, decimal: 'point' | 'comma'): Uint8Array {
  const rows = exported.get(kind)!.rows.map((each) => [...each]);
  for (const [head, value] of Object.entries(values)) rows[row]![rows[0]!.indexOf(head)] = String(value);
  // A spreadsheet that writes decimal commas writes them in every number.
  const local = (cell: string) => (decimal === 'comma' ? cell.replace(/^(-?\d+)\.(\d+)$/, '$1,$2') : cell);
  const between = decimal === 'comma' ? ';' : ',';
  const quoted = (cell: string) => (/[",;\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
  const lines = rows.map((each) => each.map((cell) => quoted(local(cell))).join(between));
  return new TextEncoder().encode(`${lines.join('\r\n')}\r\n`);
}

async function understood(bytes: Uint8Array, file: string, decimal?: 'point' | 'comma', plant = remarked) {
  return understanding(textsOf(plant), { file, edited: await readEdited(bytes, file), decimal });
}

/** Everything outside the value at a path, by an independent reader of YAML. */
function aroundOf(text: string, path: Path): readonly [before: string, after: string] {
  const node = parseDocument(text).getIn(path, true) as { readonly range: readonly [number, number, number] };
  return [text.slice(0, node.range[0]), text.slice(node.range[1])];
}

function without(text: string, path: Path): unknown {
  const document = parseDocument(text);
  document.deleteIn(path);
  return document.toJS();
}

const rowOf = (kind: string, row: string): number => {
  const found = exported.get(kind)!.rows.findIndex((each) => each.slice(0, row.split(',').length).join(',') === row);
  expect(found, row).toBeGreaterThan(0);
  return found;
};

/** The table of the plant as the new text states it, looked up in its first reading. */
async function shownAfter(plant: string, kind: string, row: number): Promise<Readonly<Record<string, string>>> {
  const { rows } = (await exportedFrom(plant)).get(kind)!;
  return Object.fromEntries(rows[0]!.map((head, index) => [head, rows[row]![index]!]));
}

const forms = ['xlsx', 'csv', 'csv with decimal commas'] as const;

async function changedBy(
  { kind, row, column, path, words: said }: Column,
  form: (typeof forms)[number],
  typed: Values,
): Promise<string | undefined> {
  const line = rowOf(kind, row);
  const decimal = form === 'csv with decimal commas' ? 'comma' : 'point';
  const bytes = form === 'xlsx' ? await typedBook(kind, line, typed) : typedText(kind, line, typed, decimal);
  const { rows } = exported.get(kind)!;
  const asWas = Object.entries(typed).every(([head, value]) => rows[line]![rows[0]!.indexOf(head)] === String(value));
  const { understood: table, edits, text: after } = await understood(bytes, `t.${form.slice(0, 4)}`, decimal);
  expect(table.kind).toBe(kind);
  expect([table.rowsMissing, table.headsUnknown, table.headsMissing]).toEqual([[], [], []]);
  if (asWas) {
    expect(table.cells).toEqual([]);
    return undefined;
  }
  expect(table.cells.map((each) => [each.is, each.column, each.of, each.words])).toEqual([
    ['change', column, row.replace(',', ', '), said],
  ]);
  expect(edits.map((each) => each.path)).toEqual([path]);
  // By an independent reader: what is outside the value is as it was, to the byte, and nothing else says otherwise.
  expect(aroundOf(after, path)).toEqual(aroundOf(remarked, path));
  expect(without(after, path)).toEqual(without(remarked, path));
  expect(parse(after)).not.toEqual(parse(remarked));
  return after;
}

describe.each(editableColumns)('$kind, $column of $row', (each) => {
  test.each(forms)(
    'law: any valid value in %s is named as that change alone, and changes that key alone',
    async (form) => {
      await fc.assert(
        fc.asyncProperty(each.cells, async ({ typed }) => {
          const local =
            form === 'csv with decimal commas'
              ? Object.fromEntries(
                  Object.entries(typed).map(([head, value]) => [
                    head,
                    typeof value === 'number' ? String(value).replace('.', ',') : value,
                  ]),
                )
              : typed;
          await changedBy(each, form, local);
        }),
        { numRuns: 3 },
      );
    },
  );

  test('the plant then shows the value in the same cell', async () => {
    for (const { typed, shown } of [each.cells, each.withUnit].flatMap((some) =>
      some === undefined ? [] : fc.sample(some, { numRuns: 1, seed: 7 }),
    )) {
      const after = await changedBy(each, 'xlsx', typed);
      if (after === undefined) continue;
      const now = await shownAfter(after, each.kind, rowOf(each.kind, each.row));
      for (const [head, value] of Object.entries(shown)) {
        if (typeof value === 'number') expect(Number(now[head])).toBeCloseTo(value, 9);
        else expect(now[head]).toBe(value);
      }
    }
  });
});

test('every column a table lets one edit is tried above, and no other', () => {
  const design = designOf(plantOf(textsOf(remarked)), seed);
  const designed = design.machines[0]!.points.find((each) => each.point.of === tag)!;
  const editable = roundTrips.flatMap((roundTrip) => {
    const [head, ...rows] = exported.get(roundTrip.kind)!.rows;
    return head!
      .map((each) => each.replace(/, [^,]*$/, ''))
      .filter((each, index, all) => all.indexOf(each) === index)
      .filter((column) =>
        rows
          .filter((row) => roundTrip.pointOf(row[0]!) === tag)
          .some((row) => roundTrip.place(column, designed, row, []).is !== 'derived'),
      )
      .map((column) => `${roundTrip.kind} ${column}`);
  });
  expect(new Set(editableColumns.map(({ kind, column }) => `${kind} ${column}`))).toEqual(new Set(editable));
});
