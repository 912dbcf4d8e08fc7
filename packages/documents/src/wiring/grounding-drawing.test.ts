import { type Design, design, loopOpenings, wiredPoints, wiringGraph } from '@soundpost/core';
import { expect, test } from 'vitest';
import { examplePlant } from '../../../../evidence/reading.ts';
import { loopedWiring, wiredPump } from '../../../../evidence/wiring/wired-pump.ts';
import { cellText } from '../document-set/cells.ts';
import { issueFacts } from '../document-set/issue-facts.ts';
import { documentRecord } from '../document-set/issued-kind.ts';
import { groundingDrawings } from '../document-set/kinds/grounding-drawing.ts';
import { drawingsIn, tablesOf } from '../document-set/record.ts';
import type { Drawing, Label } from '../drawing/drawing.ts';
import { boxesAlong } from '../drawing/label-placing.ts';
import { inside, labelBox, overlap } from '../drawing/text-extent.ts';

const compressor = design(examplePlant('hydrogen-compressor'), 1);
const barriers = { wiring: 'screen-earthed: cabinet, screen-cut-at: junction box, equipotential-bond: yes' };
const plants: readonly (readonly [string, Design])[] = [
  ['the compressor', compressor],
  ['the turbo compressor', design(examplePlant('turbo-compressor'), 1)],
  ['nothing stated', wiredPump()],
  ['three loops', wiredPump(loopedWiring)],
  ['a cut screen and a bond', wiredPump(barriers)],
  ['an unknown screen', wiredPump({ wiring: 'screen-earthed: unknown, screen-on-box: yes, box-on-machine: no' })],
  ['a long name', wiredPump({ ...loopedWiring, machine: `P${'W'.repeat(75)}` })],
  ['many short words', wiredPump({ ...barriers, machine: `P-${'ab-'.repeat(25)}1` })],
];
const record = (of: Design) => documentRecord(groundingDrawings, of, issueFacts(of, { contentHash: 'a1b2' }))!;
const drawingsOf = (of: Design) => drawingsIn(record(of)).map((each) => each.drawing);
const pointsOf = (of: Design) => of.machines.flatMap((machine) => machine.points.map((each) => each.point.of));
const textsOf = (of: Design) =>
  tablesOf(record(of)).flatMap(({ rows }) => rows.flatMap((row) => row.map((cell) => cellText(cell))));
const labelsOf = ({ marks }: Drawing) => marks.filter((mark): mark is Label => mark.is === 'label' && mark.text !== '');

test.each(plants)('law: no label touches another one, is cut off or is run through by a line: %s', (_, of) => {
  for (const drawing of drawingsOf(of)) {
    const labels = labelsOf(drawing);
    const sheet = { x: 0, y: 0, width: drawing.width, height: drawing.height };
    const strokes = drawing.marks.flatMap((mark) => {
      if (mark.is === 'polyline') return boxesAlong(mark.points, 0.1);
      if (mark.is === 'circle') return mark.radius > 5 ? [] : [{ x: mark.x, y: mark.y, width: 0.1, height: 0.1 }];
      return [];
    });
    for (const [index, one] of labels.entries()) {
      const { x, y, width, height } = labelBox(one);
      const letters = { x: x + width * 0.1, y: y + height * 0.15, width: width * 0.75, height: height * 0.62 };
      const touched = labels.slice(index + 1).filter((other) => overlap(labelBox(one), labelBox(other)));
      expect([one.text, touched.map((each) => each.text)]).toEqual([one.text, []]);
      expect([one.text, inside(labelBox(one), sheet)]).toEqual([one.text, true]);
      expect([one.text, strokes.filter((each) => overlap(each, letters))]).toEqual([one.text, []]);
    }
  }
});

test.each(plants)('law: every point with a chain is on a drawing, and in its table by its whole name: %s', (_, of) => {
  const written = drawingsOf(of).flatMap((each) => labelsOf(each).map(({ text }) => text.replace(/…$/, '')));
  const table = textsOf(of);
  for (const point of pointsOf(of)) {
    const name = point.split('/')[1]!;
    expect(written.filter((text) => text === point || text === name).length).toBe(1);
    expect(table).toContain(`return of ${point}`);
  }
});

test.each(plants)('law: every opening is marked once on the drawings, by its number in the table: %s', (_, of) => {
  const points = of.machines.flatMap(wiredPoints);
  const openings = loopOpenings(wiringGraph(points), points);
  const written = drawingsOf(of).flatMap((each) => labelsOf(each).map(({ text }) => text));
  // The key beside each drawing shows a 1 of its own.
  const numbers = written.filter((text) => /^[0-9]+$/.test(text)).length - drawingsOf(of).length;
  expect(numbers).toBe(openings.length);
  const table = tablesOf(record(of)).find((each) => each.name === 'openings')!;
  expect(table.rows.map((row) => cellText(row[1]!))).toEqual(openings.map((each) => each.name));
});

test('negative: a joint of which nothing is known is a question mark on the drawing and unknown in the table', () => {
  const unknown = wiredPump({ wiring: 'screen-earthed: unknown' });
  const marks = (of: Design) =>
    drawingsOf(of)
      .flatMap(labelsOf)
      .filter((each) => each.text === '?').length;
  // The key shows one.
  expect(marks(wiredPump())).toBe(1);
  expect(marks(unknown)).toBeGreaterThan(2);
  expect(textsOf(unknown).filter((each) => /^unknown: .*screen is earthed/.test(each)).length).toBeGreaterThan(1);
});

test('negative: where nothing is stated of a screen none is drawn, and the point is named', () => {
  const of = wiredPump();
  const looks = drawingsOf(of).flatMap(({ marks }) =>
    marks.filter((mark) => 'look' in mark && mark.look === 'curve-second'),
  );
  expect(looks.length).toBe(1);
  const lists = record(of).sheets.flatMap(({ blocks }) =>
    blocks.flatMap((each) => (each.is === 'list' ? each.entries : [])),
  );
  for (const point of pointsOf(of)) expect(lists).toContain(point);
});
