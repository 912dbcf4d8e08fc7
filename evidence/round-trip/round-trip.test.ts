import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { readEdited, type StatedTexts, understanding } from '@soundpost/commands/pure';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import edited from './edited.json' with { type: 'json' };

const root = resolve(import.meta.dirname, '../..');
const plant = readFileSync(join(root, 'examples/raw-water-pump/plant.yaml'), 'utf8');
const texts: StatedTexts = {
  from: 'plant.yaml',
  plant,
  catalogues: new Map([['generic', readFileSync(join(root, 'packages/files/catalogues/generic.yaml'), 'utf8')]]),
};

async function understood(file: string) {
  const bytes = new Uint8Array(readFileSync(join(import.meta.dirname, file)));
  return understanding(texts, { file, edited: await readEdited(bytes, file), decimal: undefined });
}

const stated = (text: string) => parse(text).machines['P-301'].points['pump-drive-end-loop'];

test.each(Object.entries(edited.tables))(
  'independent: %s saved by another writer says what it typed, and nothing else',
  async (kind, typed) => {
    const { understood: table, edits } = await understood(`${kind}.xlsx`);
    expect(table.carriesExported).toBe(true);
    expect([...table.cells].map((each) => [each.cell, each.is]).sort()).toEqual(
      typed.map((each) => [each.cell, 'change']).sort(),
    );
    expect(edits).toHaveLength(typed.length);
    expect([table.rowsMissing, table.headsUnknown, table.headsMissing]).toEqual([[], [], []]);
  },
);

test('independent: what another writer typed stands in the plant file afterwards', async () => {
  const list = stated((await understood('instrument-list.xlsx')).text);
  expect(list).toMatchObject({ 'surface-temperature': '71.5 °C', location: 'pump, drive end; “lower” half: 45° down' });
  expect(list.chain.mount).toBe('epoxy-pad');
  const cables = stated((await understood('cable-schedule.xlsx')).text);
  expect(cables).toMatchObject({ wiring: { 'power-distance': '300 mm' } });
  expect(cables.chain['cable-length']).toBe('91.5 m');
  const { alarm } = stated((await understood('alarm-register.xlsx')).text);
  expect(alarm).toMatchObject({ baseline: '2.1 mm/s rms 2-1000 Hz', 'trip-delay': '4 s', delay: '3 s' });
});

test('negative: a formula, a date and merged cells of another writer are each refused by name', async () => {
  const { understood: table, edits, text } = await understood('spoiled.xlsx');
  expect(edits).toEqual([]);
  expect(text).toBe(plant);
  const told = new Map(table.cells.map((each) => [each.column, `${each.is}: ${each.words}`]));
  expect(told.get('Length')).toMatch(/^refused: A formula/);
  expect(told.get('Apart by')).toMatch(/^refused: .*date/);
  expect(told.get('Screen earthed at')).toMatch(/^refused: The cell is merged/);
});
