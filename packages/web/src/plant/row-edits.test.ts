import { readFileSync } from 'node:fs';
import { applyEdits, UnreadableFile, yamlAt } from '@soundpost/files';
import { expect, test } from 'vitest';
import type { Origin } from '../engine/origin.ts';
import { plantFrom } from '../engine/read-plant.ts';
import { chainWaits, rowEdits, type Typed, wordsAtCell } from './row-edits.ts';

const at = (path: string) => readFileSync(new URL(`../../../../${path}`, import.meta.url), 'utf8');
const file = at('examples/raw-water-pump/plant.yaml');
const catalogues = { generic: { path: 'generic.yaml', text: at('packages/files/catalogues/generic.yaml') } };
const row = { machine: 'P-301', name: 'pump-drive-end-horizontal', cable: 'TSP', said: {} };
const path = ['machines', 'P-301', 'points', 'pump-drive-end-horizontal'];

const edited = (typed: Typed, text = file, of = row, origin?: Origin) =>
  applyEdits(text, rowEdits(of, typed, origin)).text;
function words(text: string): string {
  try {
    plantFrom(text, 'plant.yaml', catalogues);
  } catch (error) {
    if (error instanceof UnreadableFile) return wordsAtCell(error.message);
    throw error;
  }
  return '';
}

test('law: a typed cell changes its own value and nothing else', () => {
  expect(edited(new Map([['mount', 'magnet-flat']]))).toBe(file.replace('mount: stud', 'mount: magnet-flat'));
  const hostile = 'a: b # "c" {';
  const text = edited(new Map([['location', hostile]]));
  expect(plantFrom(text, 'plant.yaml', catalogues).machines[0]!.points[0]!.statement.location).toMatchObject({
    value: hostile,
  });
});

test('law: a length without a unit is refused in words that need no line number', () => {
  const said = words(edited(new Map([['cableLength', '85']])));
  expect(said).toMatch(/^Read '85'/);
  expect(said).toContain('none is ever assumed');
  expect(words(edited(new Map([['cableLength', '']])))).not.toBe('');
  const spaced = `plant.yaml:9:1: machines/P 1/points/a b: c/chain: read 'x', expected a mount.\n  9 | y`;
  expect(wordsAtCell(spaced)).toBe("Read 'x', expected a mount.");
  expect(words(edited(new Map([['mount', 'stuff']])))).toContain("Did you mean 'stud'?");
});

test('law: a chain is begun cell by cell, and is there once it is whole', () => {
  const bare = applyEdits(file, [{ path: [...path, 'chain'], yaml: undefined }]).text;
  const none = { ...row, cable: '' };
  expect(words(edited(new Map([['transducer', 'ACC-100']]), bare, none))).toContain("'cable'");
  expect(chainWaits(none, new Map([['transducer', 'ACC-100']]))).toContain('its cable and its input');
  expect(chainWaits(none, new Map([['location', 'elsewhere']]))).toBeUndefined();
  expect(chainWaits(row, new Map([['transducer', 'ACC-100']]))).toBeUndefined();
  const whole = edited(
    new Map([
      ['transducer', 'ACC-100'],
      ['cable', 'TSP'],
      ['input', 'PORT-24'],
    ]),
    bare,
    none,
  );
  expect(words(whole)).toBe('');
  expect(yamlAt(whole, [...path, 'chain', 'cable-length'])).toBe('unknown');
});

test('law: what was said of a value does not pass over to another; what is said of the new one stands beside it', () => {
  const loop = {
    machine: 'P-301',
    name: 'pump-drive-end-loop',
    cable: 'TSP',
    said: { cableLength: { status: 'measured', source: 'walked on the tray', ask: '', bounded: false } },
  };
  const stood = 'cable-length: { value: 85 m, status: measured, source: walked on the tray }';
  expect(file).toContain(stood);
  const length = new Map([['cableLength', '90 m']] as const);
  expect(applyEdits(file, rowEdits(loop, length)).text).toBe(file.replace(stood, 'cable-length: 90 m'));
  const surveyed = { status: 'measured', source: 'survey: sheet 3' };
  const made = applyEdits(file, rowEdits(loop, length, surveyed));
  expect(made.text).toBe(
    file.replace(stood, 'cable-length: { value: 90 m, status: measured, source: "survey: sheet 3" }'),
  );
  expect(applyEdits(made.text, made.undo).text).toBe(file);
  expect(plantFrom(made.text, 'plant.yaml', catalogues).machines[0]!.points[1]!.statedLength).toMatchObject({
    value: 90,
    ...surveyed,
  });
  const unknown = new Map([['cableLength', 'unknown']] as const);
  expect(applyEdits(file, rowEdits(loop, unknown, surveyed)).text).toBe(file.replace(stood, 'cable-length: unknown'));
  const plain = { ...row, said: {} };
  const drawn = { status: 'drawing', source: '' };
  expect(applyEdits(file, rowEdits(plain, new Map([['direction', 'axial']]), drawn)).text).toBe(
    file.replace(
      'direction: horizontal, to the right seen from the motor',
      'direction: { value: axial, status: drawing }',
    ),
  );
  // A part is a name; of a name nothing is said.
  expect(applyEdits(file, rowEdits(plain, new Map([['mount', 'magnet-flat']]), drawn)).text).toBe(
    file.replace('mount: stud', 'mount: magnet-flat'),
  );
});

test('law: a chain that is begun keeps what is said of its length', () => {
  const bare = applyEdits(file, [{ path: [...path, 'chain'], yaml: undefined }]).text;
  const typed = new Map([
    ['cable', 'TSP'],
    ['input', 'PORT-24'],
    ['cableLength', '3 m'],
  ] as const);
  const made = edited(typed, bare, { ...row, cable: '' }, { status: 'assumed', source: 'to be walked' });
  expect(plantFrom(made, 'plant.yaml', catalogues).machines[0]!.points[0]!.statedLength).toMatchObject({
    value: 3,
    status: 'assumed',
    source: 'to be walked',
  });
});
