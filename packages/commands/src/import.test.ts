import { expect, test } from 'vitest';
import { importTable } from './import.ts';
import { csvPath, imported, issued, kinds, read, typed, workbookOf } from './testing/edited-table.ts';
import { done, flowing, pump, pumpPath } from './testing/house.ts';

const loop = 'machines/P-301/points/pump-drive-end-loop';

test.each(kinds)('law: %s exported and handed back in as it is changes nothing', async (kind) => {
  const surroundings = await issued();
  for (const table of [workbookOf(kind), csvPath(kind)]) {
    const { outcome, json } = await imported(surroundings, table, { apply: true });
    expect(json.cells).toEqual([]);
    expect(json.written).toBe(false);
    expect(outcome.exit).toBe(0);
    if (table.endsWith('.xlsx')) expect(flowing(outcome)).toContain('the plant is as it was then');
  }
  expect(read(surroundings, pumpPath)).toBe(pump());
});

const edits: readonly (readonly [string, string, Readonly<Record<string, string | number>>, string, string])[] = [
  ['cable-schedule', 'pump-drive-end-loop', { 'Length, m': 86.5 }, `${loop}/chain/cable-length`, '86.5 m'],
  ['instrument-list', 'pump-drive-end-loop', { Mount: 'magnet-2pole' }, `${loop}/chain/mount`, 'magnet-2pole'],
  ['instrument-list', 'pump-drive-end-loop', { Surface: '160 °F' }, `${loop}/surface-temperature`, '160 °F'],
  ['instrument-list', 'pump-drive-end-loop', { Direction: 'up, or: so' }, `${loop}/direction`, '"up, or: so"'],
  [
    'alarm-register',
    'pump-drive-end-loop baseline',
    { 'Set at': 2.1 },
    `${loop}/alarm/baseline`,
    '2.1 mm/s rms 2-1000 Hz',
  ],
  ['alarm-register', 'pump-drive-end-loop trip', { 'Delay, s': 4 }, `${loop}/alarm/trip-delay`, '4 s'],
];

test.each(edits)('law: one edited cell of %s (%s, %j) gives that one edit', async (kind, row, cells, path, yaml) => {
  const surroundings = await issued();
  await typed(surroundings, kind, cells, (names) => names.endsWith(row) || names.includes(`/${row}`));
  const preview = await imported(surroundings, 'edited.xlsx');
  expect(preview.cells.map((each) => [each.is, each.path?.join('/'), each.yaml])).toEqual([['change', path, yaml]]);
  expect(read(surroundings, pumpPath)).toBe(pump());
  const applied = await imported(surroundings, 'edited.xlsx', { apply: true });
  expect(applied.json.written).toBe(true);
  expect(read(surroundings, pumpPath)).not.toBe(pump());
  const again = await imported(surroundings, 'edited.xlsx');
  expect(again.cells.map((each) => each.is)).toEqual(['as the plant has it']);
});

test('what the plant changed since the export is a conflict, and is not written', async () => {
  const surroundings = await issued();
  await typed(surroundings, 'cable-schedule', { 'Length, m': 90 }, (names) => names.includes('loop'));
  const changed = pump({ 'value: 85 m': 'value: 87 m' });
  surroundings.files.set(pumpPath, new TextEncoder().encode(changed));
  const { outcome, cells } = await imported(surroundings, 'edited.xlsx', { apply: true });
  expect(outcome.exit).toBe(1);
  expect(cells.map((each) => each.is)).toEqual(['conflict']);
  expect(flowing(outcome)).toContain("exported '85', edited to '90', now '87'");
  expect(flowing(outcome)).toContain('Exported in revision A');
  expect(flowing(outcome)).toContain('the plant has changed since');
  expect(read(surroundings, pumpPath)).toBe(changed);
});

test('a text is compared with the issue it came from, where that is said', async () => {
  const surroundings = await issued();
  const changed = pump({ 'value: 85 m': 'value: 87 m' });
  surroundings.files.set(pumpPath, new TextEncoder().encode(changed));
  const blind = await imported(surroundings, csvPath('cable-schedule'));
  expect(blind.json.carriesExported).toBe(false);
  expect(blind.cells.map((each) => each.is)).toContain('change');
  expect(flowing(blind.outcome)).toContain('does not carry what was exported');
  const told = await imported(surroundings, csvPath('cable-schedule'), { exported: 'out/revision-A' });
  expect(told.cells).toEqual([]);
});

const refusals: readonly (readonly [string, string, string | number, string])[] = [
  ['instrument-list', 'Surface', '70', 'has no unit'],
  ['instrument-list', 'Surface', '70,5 °C', 'decimal comma or a decimal point'],
  ['instrument-list', 'Transducer', 'LPV-52', 'no such part'],
  ['instrument-list', 'Mount', '-', 'is no value'],
  ['instrument-list', 'Direction', 'n/a', 'is no value'],
  ['instrument-list', 'Location', '', 'Nothing is taken out'],
  ['instrument-list', 'Kind', 'Accelerometer', 'worked out, not stated'],
  ['instrument-list', 'Tag', 'P-301/another', 'What names a row'],
  ['cable-schedule', 'Length, m', -4, 'zero'],
  ['cable-schedule', 'Capacitance, nF', 3, 'worked out, not stated'],
  ['alarm-register', 'Current, mA', 7, 'worked out, not stated'],
];

test.each(refusals)('negative: in %s a cell %s of %j is refused with a reason', async (kind, head, value, words) => {
  const surroundings = await issued();
  await typed(surroundings, kind, { [head]: value }, (names) => names.includes('loop'));
  const { outcome, cells } = await imported(surroundings, 'edited.xlsx', { apply: true });
  expect(outcome.exit).toBe(1);
  expect(cells.map((each) => each.is)).toEqual(['refused']);
  expect(cells[0]!.words).toContain(words);
  expect(read(surroundings, pumpPath)).toBe(pump());
});

test('a value in other units that the plant has already is no change', async () => {
  const surroundings = await issued();
  await typed(surroundings, 'instrument-list', { Surface: '149 °F' }, (names) => names.includes('loop'));
  const { cells } = await imported(surroundings, 'edited.xlsx');
  expect(cells.map((each) => each.is)).toEqual(['as the plant has it']);
});

test('a delay that the trip takes too is said to reach it', async () => {
  const surroundings = await issued();
  await typed(surroundings, 'alarm-register', { 'Delay, s': 5 }, (names) => names.endsWith('alert'));
  const { cells } = await imported(surroundings, 'edited.xlsx');
  expect(cells[0]!.words).toContain('The trip takes it too');
});

test('negative: a table of something else is refused, and rows that were left out take nothing away', async () => {
  const surroundings = await issued();
  surroundings.files.set('odd.csv', new TextEncoder().encode('Name,Age\nA,4\n'));
  expect((await done(importTable, { plant: pumpPath, table: 'odd.csv', apply: true }, surroundings)).exit).toBe(2);
  const [head, first] = read(surroundings, csvPath('cable-schedule')).split('\r\n');
  surroundings.files.set('less.csv', new TextEncoder().encode(`${head}\r\n${first}\r\n`));
  const { outcome, cells } = await imported(surroundings, 'less.csv', { apply: true });
  expect(cells).toEqual([]);
  expect(flowing(outcome)).toContain('stay in the plant: P-301/pump-drive-end-loop/C1');
});
