import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { type Design, design, mountKinds } from '@soundpost/core';
import { expect, test } from 'vitest';
import { examplePlant, plantOf, root } from '../../../../../evidence/reading.ts';
import { wiredPump } from '../../../../../evidence/wiring/wired-pump.ts';
import { fittingOf } from '../../chain/mount-fitting.ts';
import { mountSection, placesOn } from '../../chain/mount-section.ts';
import type { Label } from '../../drawing/drawing.ts';
import { boxesAlong } from '../../drawing/label-placing.ts';
import { inside, labelBox, overlap } from '../../drawing/text-extent.ts';
import { cellText } from '../cells.ts';
import { issueFacts } from '../issue-facts.ts';
import { documentRecord } from '../issued-kind.ts';
import { tablesOf } from '../record.ts';
import { mountingInstructions } from './mounting-instructions.ts';

const compressor = design(examplePlant('hydrogen-compressor'), 1);
const pump = wiredPump();
const record = (of: Design) => documentRecord(mountingInstructions, of, issueFacts(of, { contentHash: 'a1b2' }))!;
const rowsOf = (of: Design, ending: string) =>
  tablesOf(record(of))
    .filter((each) => each.name.endsWith(ending))
    .flatMap(({ columns, rows }) =>
      rows.map((row) => Object.fromEntries(columns.map(({ head }, at) => [head, cellText(row[at]!)]))),
    );

test.each([
  ['compressor', compressor],
  ['pump', pump],
])('law: every point with a chain stands once under the mount it has: %s', (_, of) => {
  const points = of.machines.flatMap((machine) => machine.points.map((each) => each.point.of));
  expect(rowsOf(of, ' points').map((row) => row.Point)).toEqual(points);
  expect(rowsOf(of, ' record').map((row) => row.Point)).toEqual(points);
});

test('negative: what no sheet states is unknown, with a blank to fill, and no number stands in its place', () => {
  const rows = rowsOf(compressor, ' fitting');
  const torque = rows.find((row) => row.Is === 'Tightening torque')!;
  expect(torque['As stated']).toMatch(/^unknown: .*torque/);
  for (const row of rows) {
    const unknown = row['As stated']!.startsWith('unknown');
    expect(row["From the maker's sheet"]).toBe(unknown ? '' : '—');
  }
});

test('law: a torque that is stated stands there with how it is known, and leaves no blank', () => {
  const torque = '{ value: 4 N*m, status: data sheet, source: sheet of the stud }';
  const mount = `parts:\n  mounts:\n    stud-m6: { kind: stud, added-mass: 0 g, torque: ${torque} }\n`;
  const demo = readFileSync(resolve(root, 'examples/raw-water-pump/plant.yaml'), 'utf8');
  const stated = plantOf(
    demo.replace('\nmachines:', `\n${mount}\nmachines:`).replaceAll('mount: stud', 'mount: stud-m6'),
  );
  const row = rowsOf(design(stated, 1), ' fitting').find((each) => each.Is === 'Tightening torque')!;
  expect(row['As stated']).toMatch(/^4 N.m$/);
  expect(row['Known by']).toBe('data sheet, sheet of the stud');
  expect(row["From the maker's sheet"]).toBe('—');
});

test('law: each sheet begins with the caution; it names the hazardous area, and asks where none is stated', () => {
  for (const [of, words] of [
    [compressor, 'lie in a hazardous area'],
    [pump, 'No hazardous area is stated'],
  ] as const) {
    for (const { blocks } of record(of).sheets) {
      const first = blocks[0]!;
      expect(first.is === 'caution' && first.text).toContain(words);
      expect(first.is === 'caution' && first.text).toContain('licensed for this practice');
    }
  }
});

test('negative: a probe that looks at the shaft is not told to be fitted as a casing transducer', () => {
  const probe = rowsOf(compressor, ' points').find((row) => row.Point === 'C-201B/rod-drop-1')!;
  expect(probe.Mind).toContain('set by its gap');
});

test.each(mountKinds.map((each) => each.kind))(
  'law: every letter on the section of a %s is a row of its table, none is cut off, touched or crossed',
  (kind) => {
    const { fields } = fittingOf(kind);
    const keys = fields.filter((key) => key in placesOn(kind));
    expect(keys.toSorted()).toEqual(Object.keys(placesOn(kind)).toSorted());
    const drawing = mountSection(kind, 'W'.repeat(80), new Map(keys.map((key, at) => [key, 'ABCDEFGH'[at]!])));
    const labels = drawing.marks.filter((mark): mark is Label => mark.is === 'label');
    expect(labels.map((each) => each.text).toSorted()).toEqual(keys.map((_, at) => 'ABCDEFGH'[at]));
    const lines = drawing.marks.flatMap((mark) => (mark.is === 'polyline' ? boxesAlong(mark.points, 0.1) : []));
    const sheet = { x: 0, y: 0, width: drawing.width, height: drawing.height };
    const reach = drawing.marks.flatMap((mark) => (mark.is === 'polyline' ? mark.points.map(([, y]) => y) : []));
    expect(Math.min(...reach)).toBeGreaterThanOrEqual(0);
    for (const [index, one] of labels.entries()) {
      expect(inside(labelBox(one), sheet)).toBe(true);
      expect(labels.slice(index + 1).filter((other) => overlap(labelBox(one), labelBox(other)))).toEqual([]);
      expect(lines.filter((each) => overlap(each, labelBox(one)))).toEqual([]);
    }
  },
);
