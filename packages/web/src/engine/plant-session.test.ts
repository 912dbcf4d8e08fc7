import { design } from '@soundpost/core';
import { applyEdits } from '@soundpost/files';
import { expect, test } from 'vitest';
import { exampleDisk, exampleNames } from './example-disk.ts';
import { machineTexts, pieceInPlace, pieceOf } from './machine-texts.ts';
import { PlantSession } from './plant-session.ts';
import { plantFrom } from './read-plant.ts';

/** The pump plant with a second pump like the first. */
function twoPumps() {
  const disk = exampleDisk('raw-water-pump');
  const start = disk.text.indexOf('  P-301:');
  return { ...disk, text: disk.text + disk.text.slice(start).replace('  P-301:', '  P-302:') };
}

function sessionOf(disk: ReturnType<typeof twoPumps>): PlantSession {
  const session = new PlantSession(disk.path, disk.catalogues);
  session.read(disk.text);
  while (session.advance());
  return session;
}

test('law: a plant worked out machine by machine is the plant worked out at once', () => {
  for (const name of exampleNames) {
    const disk = exampleDisk(name);
    const session = sessionOf(disk);
    const whole = design(plantFrom(disk.text, disk.path, disk.catalogues), 1);
    expect(session.design?.verdict).toBe(whole.verdict);
    expect(JSON.stringify(session.design?.findings)).toBe(JSON.stringify(whole.findings));
  }
});

test('law: an edit of one machine leaves the other as worked out before, and changes the edited one', () => {
  const disk = twoPumps();
  const session = sessionOf(disk);
  const [first, second] = [session.machine('P-301'), session.machine('P-302')];
  const path = ['machines', 'P-302', 'points', 'pump-drive-end-horizontal', 'chain', 'mount'];
  session.read(applyEdits(disk.text, [{ path, yaml: 'magnet-flat' }]).text);
  expect(session.machine('P-301')).toBe(first);
  expect(session.machine('P-302')).not.toBe(second);
  expect(session.machine('P-302')!.points[0]!.appraisal!.outcome).toBe('fails');
});

test('law: an edit outside the machines works every machine out again', () => {
  const disk = twoPumps();
  const session = sessionOf(disk);
  const first = session.machine('P-301');
  session.read(applyEdits(disk.text, [{ path: ['policy', 'headroom'], yaml: '30 dB' }]).text);
  expect(session.machine('P-301')).not.toBe(first);
});

test('law: the pieces of a plant put together again are the plant, byte for byte', () => {
  for (const name of exampleNames) {
    const { text, path, catalogues } = exampleDisk(name);
    const cut = machineTexts(text)!;
    expect(pieceOf(cut, cut.machines)).toBe(text);
    expect(pieceInPlace(cut, cut.machines)).toBe(text);
    const machines = plantFrom(text, path, catalogues).machines.map((each) => each.name);
    expect(cut.machines.map((each) => each.name)).toEqual(machines);
  }
});

test('law: an edit made in the text of its machine is the edit made in the whole file, and so is what undoes it', () => {
  const disk = twoPumps();
  const session = sessionOf(disk);
  const points = ['machines', 'P-302', 'points'];
  const edits = [
    { path: [...points, 'pump-drive-end-horizontal', 'chain', 'cable-length'], yaml: '12 m' },
    { path: [...points, 'pump-drive-end-loop', 'chain'], yaml: undefined },
    { path: [...points, 'new point', 'location'], yaml: 'pump, cover' },
  ];
  const made = session.edited(disk.text, edits);
  expect(made.text).toBe(applyEdits(disk.text, edits).text);
  expect(session.edited(made.text, made.undo).text).toBe(disk.text);
});

test('negative: what is wrong in the second machine is refused at its line in the file', () => {
  const disk = twoPumps();
  const text = disk.text.replace(/^ {2}P-302:[\s\S]*$/m, (machine) => machine.replace('160 kW', '160 m'));
  const line = text.split('\n').findIndex((each) => each.includes('160 m,')) + 1;
  const session = new PlantSession(disk.path, disk.catalogues);
  expect(() => {
    session.read(text);
    while (session.advance());
  }).toThrow(new RegExp(`:${line}:`));
});

test('a file that lets one place stand for another, or names a machine twice, is read as a whole', () => {
  const { text } = exampleDisk('raw-water-pump');
  expect(machineTexts(text.replace('location: pump', 'location: &place pump'))).toBeUndefined();
  expect(machineTexts(text + text.slice(text.indexOf('  P-301:')))).toBeUndefined();
});

test('a plant laid out another way is read all the same', () => {
  const disk = exampleDisk('raw-water-pump');
  expect(machineTexts('machines: {}')).toBeUndefined();
  const session = sessionOf({ ...disk, text: disk.text.replace('machines:', '"machines":') });
  expect(session.design?.machines.length).toBe(1);
});
