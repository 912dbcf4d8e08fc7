import { nodeOf } from '@soundpost/core';
import { type Drawing, label, line, type Mark, rectangle } from '../drawing/drawing.ts';
import { drawnAs } from '../drawing/symbols.ts';
import { fitted, wrapped } from '../drawing/text-extent.ts';
import { dot, earthSymbolHeight, functionalEarth, openEnd, protectiveEarth } from './earth-symbols.ts';
import { across, type GroundingRow, heights, type RowSurroundings, rowHeight, rowMarks } from './grounding-row.ts';
import { openingMarks, small, smallLetters } from './joint-marks.ts';
import { jointBetween } from './joints.ts';

const width = 760;
/** Above the first row of a bar, for its name and the bond along the cable; below the last, for its earth. */
const head = 28;
const letters = 11.5;
const lineHeight = 1.25 * letters;
/** Names of the frame at the left and of the bar at the right, side by side. */
const frameRoom = 310;
const barRoom = 390;
const mostLines = 3;
const below = earthSymbolHeight + 12;

/** Rows of one machine whose commons lead to one bar stand together, those with a barrier last. */
export function groundingOrder(rows: readonly GroundingRow[]): readonly GroundingRow[] {
  const key = (row: GroundingRow) => `${barOf(row)}\n${barrierOf(row) ?? ''}`;
  return rows.toSorted((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0));
}

function barOf({ joints }: GroundingRow): string {
  return jointBetween(joints, 'common', 'cabinet earth bar')?.to.id ?? '';
}

function barrierOf({ joints }: GroundingRow): string | undefined {
  return jointBetween(joints, 'signal', 'barrier earth bar')?.to.id;
}

/**
 * Earths of some points of one machine, in their order: frame, cases, returns, screens, boxes, barriers, commons and
 * bars, with every joint that conducts, that does not, and that is not known, and where each ground loop is opened.
 */
export function groundingDrawing(machine: string, rows: readonly GroundingRow[], around: RowSurroundings): Drawing {
  const bars = [...new Set(rows.map(barOf))];
  const frame = nodeOf.frame(machine);
  const named = wrapped(frame, frameRoom, letters, mostLines);
  const marks: Mark[] = named.map((text, index) =>
    label(across.frame - 6, 13 + index * lineHeight, text, { size: letters }),
  );
  const start = 16 + (named.length - 1) * lineHeight;
  let y = start;
  for (const bar of bars) {
    const of = rows.filter((row) => barOf(row) === bar);
    const name = wrapped(bar, barRoom, letters, mostLines);
    y += (name.length - 1) * lineHeight;
    marks.push(...barMarks(bar, name, frame, y, of.length, around));
    y += head;
    const tops = of.map((_, index) => y + index * rowHeight);
    marks.push(...of.flatMap((row, index) => rowMarks(row, tops[index]!, around)));
    marks.push(...barrierBars(of, tops));
    y += of.length * rowHeight + below;
  }
  const foot = y - below;
  marks.push(
    ...drawnAs('bar', rectangle(across.frame - 6, start + 4, 12, foot - start - 4, 'hatched')),
    ...(isEarthed(frame, around) ? protectiveEarth(across.frame, foot) : []),
    ...legend(y + 4),
  );
  return {
    width,
    height: y + 4 + 3 * legendStep,
    title: `Earths of ${machine}`,
    description: `${rows.length} points from the frame of the machine to ${bars.length} earth bars; each joint is told in the table beside the drawing.`,
    marks,
  };
}

function isEarthed(node: string, { kinds, earthing }: RowSurroundings): boolean {
  return (earthing.get(node) ?? []).some((to) => kinds.get(to) === 'main earth');
}

function barMarks(
  bar: string,
  name: readonly string[],
  frame: string,
  top: number,
  count: number,
  around: RowSurroundings,
): readonly Mark[] {
  const x = across.bar;
  const bottom = top + head + count * rowHeight;
  const bond = (around.earthing.get(frame) ?? []).includes(bar);
  return [
    ...name.map((text, index) =>
      label(width - 4, top + 12 - (name.length - 1 - index) * lineHeight, text, { size: letters, anchor: 'end' }),
    ),
    ...drawnAs('bar', rectangle(x - 6, top + 17, 12, bottom - top - 17, 'hatched')),
    ...(isEarthed(bar, around)
      ? protectiveEarth(x, bottom)
      : [small(width - 4, bottom + 14, 'floats, as far as stated', { anchor: 'end', look: 'italic' })]),
    ...(bond
      ? [
          small(380, top + 17, 'equipotential bond', { anchor: 'middle' }),
          line(across.frame + 6, top + 22, x - 6, top + 22, 'target'),
          dot(across.frame + 6, top + 22),
          dot(x - 6, top + 22),
        ]
      : []),
  ];
}

/** One bar for each set of barriers, past their rows and down to an earth of its own. */
function barrierBars(rows: readonly GroundingRow[], tops: readonly number[]): readonly Mark[] {
  const names = [...new Set(rows.flatMap((row) => barrierOf(row) ?? []))];
  return names.flatMap((name): readonly Mark[] => {
    const of = tops.filter((_, index) => barrierOf(rows[index]!) === name);
    const bottom = of.at(-1)! + 80;
    return [
      line(across.barrier, heights(of[0]!).barrier, across.barrier, bottom, 'target'),
      ...functionalEarth(across.barrier, bottom),
      small(across.barrier + 18, bottom + 14, fitted(name, 250, smallLetters)),
    ];
  });
}

const legendStep = 21;

/** What each sign means, beside the sign. */
function legend(top: number): readonly Mark[] {
  const columns = [8, 200, 430];
  const entries: readonly (readonly [(x: number, y: number) => readonly Mark[], string])[] = [
    [(x, y) => protectiveEarth(x + 12, y - 12), 'protective earth'],
    [(x, y) => functionalEarth(x + 12, y - 12), 'functional earth of barriers'],
    [(x, y) => openingMarks('1', x + 4, y, 'right'), 'opening 1 of the plant'],
    [(x, y) => [line(x, y, x + 24, y, 'ink'), dot(x, y), dot(x + 24, y)], 'joined'],
    [
      (x, y) => [line(x, y, x + 7, y, 'ink'), line(x + 18, y, x + 24, y, 'ink'), openEnd(x + 7, y), openEnd(x + 17, y)],
      'kept apart',
    ],
    [(x, y) => [label(x + 12, y + 4, '?', { size: 12, anchor: 'middle', look: 'strong' })], 'not known whether joined'],
    [(x, y) => [line(x, y, x + 24, y, 'curve-second')], 'screen'],
    [(x, y) => [line(x, y, x + 24, y, 'target')], 'bond, or bar of the barriers'],
    [
      (x, y) => [line(x, y, x + 24, y, 'ink'), line(x + 12, y - 6, x + 12, y + 6, 'ink')],
      'lines that cross without a dot are not joined',
    ],
  ];
  return entries.flatMap(([sign, words], index) => {
    const [x, y] = [columns[index % 3]!, top + Math.floor(index / 3) * legendStep + 14];
    return [...sign(x, y), small(x + 46, y + 3.5, words)];
  });
}
