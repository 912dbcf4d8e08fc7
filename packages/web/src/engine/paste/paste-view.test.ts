import { readFileSync } from 'node:fs';
import { applyEdits } from '@soundpost/files';
import { expect, test } from 'vitest';
import { plantFrom } from '../read-plant.ts';
import { pasteView } from './paste-view.ts';
import type { PasteChoices } from './views.ts';

const at = (path: string) => readFileSync(new URL(`../../../../../${path}`, import.meta.url), 'utf8');
const file = at('examples/raw-water-pump/plant.yaml');
const catalogues = {
  generic: { path: 'generic.yaml', text: at('packages/files/catalogues/generic.yaml') },
};
const plant = plantFrom(file, 'plant.yaml', catalogues);

const pasted = (table: string, choices: PasteChoices = {}) => pasteView(table, choices, plant, file, {});

/** The plant as it is once the paste is confirmed. */
function after(table: string, choices: PasteChoices = {}) {
  return plantFrom(applyEdits(file, pasted(table, choices).edits).text, 'plant.yaml', catalogues);
}
const pointOf = (read: typeof plant, name: string) =>
  read.machines[0]!.points.find((each) => each.statement.name === name);

test('law: points the plant has are found by name and changed; what a table does not say stays', () => {
  const table = 'Point\tMount\tLength [m]\npump-drive-end-horizontal\tMagnet-flat\t3\npump-drive-end-loop\t\t\n';
  const view = pasted(table);
  expect(view.rows.map((row) => row.fate)).toEqual(['changed', 'as it was']);
  const point = pointOf(after(table), 'pump-drive-end-horizontal')!;
  expect(point.chosen).toMatchObject({ mount: { name: 'magnet-flat' }, transducer: { name: 'ACC-100' } });
  expect(point.way?.cableLength).toMatchObject({ value: 3 });
  expect(pointOf(after(table), 'pump-drive-end-loop')!.way?.cableLength).toMatchObject({ value: 85 });
});

test('law: the same length in another unit is no change', () => {
  expect(pasted('Point\tLength [cm]\npump-drive-end-horizontal\t200').rows[0]).toMatchObject({ fate: 'as it was' });
});

test('law: what a cell cannot say is refused there, and the rest of the row is taken', () => {
  const view = pasted('Point\tLength\tMount\tTransducer\npump-drive-end-horizontal\t85\tquick-lock\tACC-1OO\n');
  expect(view.refusals).toBe(2);
  expect(view.rows[0]!.cells.map((cell) => cell.taken)).toEqual([undefined, 'quick-lock', undefined]);
  expect(view.rows[0]!.cells[0]!.refused).toContain('no unit');
  expect(view.rows[0]!.cells[2]!.refused).toContain("Did you mean 'ACC-100'?");
  expect(view.edits).toHaveLength(1);
});

test('law: an empty cell, a stroke and n/a change nothing', () => {
  for (const silent of ['', '-', 'n/a', '#N/A', '0']) {
    const view = pasted(`Point\tLength\npump-drive-end-loop\t${silent}\n`);
    expect(view.edits, silent).toEqual([]);
  }
});

test('law: a new point is made whole, with unknown where the table says nothing', () => {
  const table =
    'Machine\tPoint\tInstallation\tTransducer\tMount\tCable\tInput\tLocation\nP-301\tmotor-drive-end\tOnline\tACC-100\tstud\tTSP\tONL-24\tmotor: "drive" end\n';
  expect(pasted(table).rows[0]).toMatchObject({ fate: 'new', refused: undefined });
  const point = pointOf(after(table), 'motor-drive-end')!;
  expect(point.statement).toMatchObject({ installation: 'online', direction: { known: false }, targets: [] });
  expect(point.statement.location).toMatchObject({ value: 'motor: "drive" end' });
  expect(point.way).toMatchObject({ cableLength: { known: false }, input: { name: 'ONL-24' } });
});

test('law: a new point that would be half a point is not made, and says what it lacks', () => {
  const rows = (table: string) => pasted(table).rows[0]!.refused;
  expect(rows('Point\tMount\nmotor-drive-end\tstud')).toContain('cable and an input');
  expect(rows('Point\tLocation\nmotor-drive-end\tmotor')).toContain('Installation');
  expect(rows('Point\tInstallation\tLength\nmotor-drive-end\tonline\t85')).toContain('made whole');
});

test('law: a row whose point cannot be told is refused whole', () => {
  const refused = (table: string) => pasted(table).rows.at(-1)!.refused;
  expect(
    refused('Machine\tPoint\tMount\nP-301\tpump-drive-end-loop\tstud\n\tpump-drive-end-horizontal\tstud'),
  ).toContain('merged');
  expect(refused('Machine\tPoint\tMount\nP-30l\tpump-drive-end-loop\tstud')).toContain("Did you mean 'P-301'?");
  expect(refused('Point\tMount\nPump-drive-end-loop\tstud')).toContain('the same way');
  expect(refused('Point\tMount\npump-drive-end-loop\tstud\npump-drive-end-loop\tquick-lock')).toContain('Row 2');
  expect(refused('Point,Length\npump-drive-end-loop,2,5 m')).toContain('3 cells');
});

test('law: a decimal comma is asked about, and nothing is taken until it is answered', () => {
  const table = 'Point;Length [m]\npump-drive-end-horizontal;2,5\n';
  expect(pasted(table)).toMatchObject({ asksDecimal: '2,5', edits: [] });
  expect(pasted(table, { decimal: 'comma' }).edits).toEqual([
    { path: ['machines', 'P-301', 'points', 'pump-drive-end-horizontal', 'chain', 'cable-length'], yaml: '2.5 m' },
  ]);
  expect(pasted(table, { decimal: 'point' }).edits).toEqual([]);
});

test('law: columns are what the engineer says they are', () => {
  const table = 'pump-drive-end-horizontal\tquick-lock';
  expect(pasted(table).unread).toContain('No column names the point');
  expect(pasted(table, { fields: ['point', 'mount'] }).rows[0]).toMatchObject({ line: 1, fate: 'changed' });
  const named = 'Point\tWay (m)\npump-drive-end-horizontal\t4';
  expect(pasted(named, { fields: ['point', 'cable-length'] }).rows[0]!.cells[0]).toMatchObject({ taken: '4 m' });
  expect(pasted('Point\tMount\tFixing\nx\ty\tz').unread).toContain('Two columns');
  expect(pasted('').unread).toContain('nothing to read');
  expect(pasted('Point\tMount').unread).toContain('no row');
});

test('law: what the file says of a value is told before it goes, and the new value takes what is said of it', () => {
  const table = 'Point\tLength [m]\tSurface temperature [°C]\tMount\npump-drive-end-loop\t90\t65\tmagnet-flat\n';
  const cells = pasted(table).rows[0]!.cells;
  expect(cells.map(({ field, said, taken }) => [field, said, taken])).toEqual([
    ['cable-length', 'measured, walked on the tray', '90 m'],
    ['surface-temperature', 'measured, infrared reading', undefined],
    ['mount', '', 'magnet-flat'],
  ]);
  expect(pointOf(after(table), 'pump-drive-end-loop')!.statedLength).toEqual({
    known: true,
    value: 90,
    written: '90 m',
  });
  const origin = { status: 'drawing', source: 'cable list, sheet 4' };
  const point = pointOf(after(table, { origin }), 'pump-drive-end-loop')!;
  expect(point.statedLength).toMatchObject({ value: 90, ...origin });
  // A value that is the same keeps what is said of it.
  expect(point.statement.surfaceTemperature).toMatchObject({ status: 'measured', source: 'infrared reading' });
  expect(pasted('Point\tLength\npump-drive-end-loop\tunknown\n', { origin }).edits).toEqual([
    { path: ['machines', 'P-301', 'points', 'pump-drive-end-loop', 'chain', 'cable-length'], yaml: 'unknown' },
  ]);
  const added = 'Machine\tPoint\tInstallation\tLocation\tTransducer\tMount\tCable\tLength\tInput\n'.concat(
    'P-301\tmotor-drive-end\tonline\tmotor\tACC-100\tstud\tTSP\t12 m\tONL-24\n',
  );
  const made = pointOf(after(added, { origin }), 'motor-drive-end')!;
  expect(made.statedLength).toMatchObject({ value: 12, ...origin });
  expect(made.statement.location).toMatchObject({ value: 'motor', ...origin });
});

const points = ['P-301/pump-drive-end-horizontal', 'P-301/pump-drive-end-loop'];
const fields = ['cable-length', 'input', undefined, undefined] as const;

test('law: a block without heads goes to the cell it is pasted at, and to the points below', () => {
  const at = { points, fields };
  const view = pasted('3 m\tONL-24\t5 of 5\n90 m\t\t\n1 m\t\t\n', { at });
  expect(view).toMatchObject({ placing: 'by place', heads: false, mayPlace: true });
  expect(view.columns.map((column) => column.field)).toEqual(['cable-length', 'input', undefined]);
  expect(view.rows.map(({ point, fate }) => [point, fate])).toEqual([
    ['pump-drive-end-horizontal', 'changed'],
    ['pump-drive-end-loop', 'changed'],
    ['', 'refused'],
  ]);
  expect(view.rows[2]!.refused).toContain('ends above');
  const read = after('3 m\tONL-24\n90 m', { at });
  expect(pointOf(read, points[0]!.slice(6))!.way).toMatchObject({
    cableLength: { value: 3 },
    input: { name: 'ONL-24' },
  });
  expect(pointOf(read, points[1]!.slice(6))!.way).toMatchObject({
    cableLength: { value: 90 },
    input: { name: 'AI-16' },
  });
});

test('law: one cell of words keeps its commas, and an empty row leaves its point alone', () => {
  const at = { points, fields: ['location', 'direction'] as const };
  expect(pasted('pump, other end', { at }).rows[0]!.cells[0]).toMatchObject({ taken: 'pump, other end' });
  const view = pasted('\t\nx\ty', { at });
  expect(view.rows.map(({ point }) => point)).toEqual(['pump-drive-end-loop']);
});

test('law: names say where a row goes, where they are pasted as names or heads name them', () => {
  const byName = pasted('pump-drive-end-loop\tpump\n', { at: { points, fields: ['point', 'location'] } });
  expect(byName).toMatchObject({ placing: 'by name' });
  expect(byName.rows[0]).toMatchObject({ point: 'pump-drive-end-loop', fate: 'changed' });
  const at = { points, fields };
  const headed = pasted('Point\tMount\npump-drive-end-loop\tmagnet-flat', { at });
  expect(headed).toMatchObject({ placing: 'by name', mayPlace: true });
  expect(headed.rows[0]!.point).toBe('pump-drive-end-loop');
  // Heads that name no point say what the columns are, the hand says where they go.
  const length = pasted('Length [m]\n3', { at });
  expect(length).toMatchObject({ placing: 'by place' });
  expect(length.rows[0]).toMatchObject({ point: 'pump-drive-end-horizontal' });
  expect(length.rows[0]!.cells[0]).toMatchObject({ taken: '3 m' });
  const gone = pasted('3 m', { at: { points: ['P-301/gone'], fields } });
  expect(gone.rows[0]!.refused).toContain('no point');
});
