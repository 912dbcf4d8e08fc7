import { design as designOf } from '@soundpost/core';
import fc from 'fast-check';
import { openXlsx, saveXlsx } from 'hucre/xlsx';
import { beforeAll, describe, expect, test } from 'vitest';
import { parse, parseDocument } from 'yaml';
import { issue } from '../issue.ts';
import { plantOf, type StatedTexts } from '../plant/stated-texts.ts';
import { seed } from '../seed.ts';
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

type Values = Readonly<Record<string, string | number>>;

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

type Path = readonly (string | number)[];

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

/** Valid values of a cell: what is typed, and what its table shows then. */
type Cells = fc.Arbitrary<{ readonly typed: Values; readonly shown: Readonly<Record<string, number | string>> }>;

const words = fc
  .array(fc.constantFrom('pump', 'über', 'Lager 2', "owner's", 'N-side', '50 %', 'a: b', '# 3', '- 4', '"q"', '{x}'), {
    minLength: 1,
    maxLength: 4,
  })
  .map((parts) => `at ${parts.join(', ')}`);
const text = (head: string): Cells => words.map((each) => ({ typed: { [head]: each }, shown: { [head]: each } }));
const among = (head: string, ...choices: readonly string[]): Cells =>
  fc.constantFrom(...choices).map((each) => ({ typed: { [head]: each }, shown: { [head]: each } }));
const tenths = (from: number, to: number) => fc.integer({ min: from * 10, max: to * 10 }).map((each) => each / 10);
const number = (head: string, from: number, to: number): Cells =>
  tenths(from, to).map((each) => ({ typed: { [head]: each }, shown: { [head]: each } }));

interface Column {
  readonly kind: string;
  /** Row of the demo table, by its first cells. */
  readonly row: string;
  readonly column: string;
  readonly path: Path;
  readonly cells: Cells;
  /** What is said with the change. */
  readonly words?: string;
  /** The same with a unit of its own, and what the table shows for it. */
  readonly withUnit?: Cells;
}

const tag = 'P-301/pump-drive-end-loop';
const at = (...path: Path): Path => ['machines', 'P-301', 'points', 'pump-drive-end-loop', ...path];

const columns: readonly Column[] = [
  { kind: 'instrument-list', row: tag, column: 'Location', path: at('location'), cells: text('Location') },
  { kind: 'instrument-list', row: tag, column: 'Direction', path: at('direction'), cells: text('Direction') },
  {
    kind: 'instrument-list',
    row: tag,
    column: 'Surface',
    path: at('surface-temperature'),
    words: 'What is stated of where the old value came from goes with it; state it anew.',
    cells: fc
      .integer({ min: -20, max: 99 })
      .map((each) => ({ typed: { Surface: `${each} °C` }, shown: { Surface: `${each} °C` } })),
    withUnit: fc
      .integer({ min: -4, max: 19 })
      .map((each) => ({ typed: { Surface: `${32 + 9 * each} °F` }, shown: { Surface: `${5 * each} °C` } })),
  },
  {
    kind: 'instrument-list',
    row: tag,
    column: 'Transducer',
    path: at('chain', 'transducer'),
    cells: among('Transducer', 'LPV-12L', 'LPA-10P', 'LPV-25X'),
  },
  {
    kind: 'instrument-list',
    row: tag,
    column: 'Mount',
    path: at('chain', 'mount'),
    cells: among('Mount', 'magnet-2pole', 'epoxy-pad', 'quick-lock'),
  },
  { kind: 'instrument-list', row: tag, column: 'Input', path: at('chain', 'input'), cells: among('Input', 'AI-12') },
  {
    kind: 'cable-schedule',
    row: `${tag}/C1`,
    column: 'Type',
    path: at('chain', 'cable'),
    cells: among('Type', 'TST', 'COAX', 'FEP'),
  },
  {
    kind: 'cable-schedule',
    row: `${tag}/C1`,
    column: 'Length',
    path: at('chain', 'cable-length'),
    cells: number('Length, m', 0, 900),
  },
  {
    kind: 'cable-schedule',
    row: `${tag}/C1`,
    column: 'Screen earthed at',
    path: at('wiring', 'screen-earthed'),
    cells: among('Screen earthed at', 'sensor', 'both', 'nowhere', 'junction box'),
  },
  {
    kind: 'cable-schedule',
    row: `${tag}/C1`,
    column: 'Runs along',
    path: at('wiring', 'power-cable'),
    cells: among('Runs along', 'none', 'converter drive', 'medium voltage'),
  },
  {
    kind: 'cable-schedule',
    row: `${tag}/C1`,
    column: 'Apart by',
    path: at('wiring', 'power-distance'),
    cells: fc
      .integer({ min: 1, max: 999 })
      .map((each) => ({ typed: { 'Apart by': `${each} mm` }, shown: { 'Apart by': `${each} mm` } })),
  },
  {
    kind: 'alarm-register',
    row: `${tag},baseline`,
    column: 'Set at',
    path: at('alarm', 'baseline'),
    cells: number('Set at', 0.1, 20),
    withUnit: fc.integer({ min: 1, max: 7 }).map((each) => ({
      typed: { 'Set at': each / 10, 'Set at, unit': 'in/s rms' },
      shown: { 'Set at': each * 2.54 },
    })),
  },
  {
    kind: 'alarm-register',
    row: `${tag},early`,
    column: 'Set at',
    path: at('alarm', 'set-points', 'early', 'level'),
    cells: number('Set at', 0.1, 20),
  },
  {
    kind: 'alarm-register',
    row: `${tag},early`,
    column: 'Delay',
    path: at('alarm', 'set-points', 'early', 'delay'),
    cells: number('Delay, s', 0.1, 99),
  },
  {
    kind: 'alarm-register',
    row: `${tag},trip`,
    column: 'Delay',
    path: at('alarm', 'trip-delay'),
    cells: number('Delay, s', 0.1, 99),
  },
  {
    kind: 'alarm-register',
    row: `${tag},early`,
    column: 'Because',
    path: at('alarm', 'set-points', 'early', 'because'),
    cells: text('Because'),
  },
];

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

describe.each(columns)('$kind, $column of $row', (each) => {
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
  expect(new Set(columns.map(({ kind, column }) => `${kind} ${column}`))).toEqual(new Set(editable));
});
