import { type NodeKind, nodeOf, type WiredPoint, type WiringGraph } from '@soundpost/core';
import { label, line, type Mark, polyline, rectangle } from '../drawing/drawing.ts';
import { drawnAs } from '../drawing/symbols.ts';
import { boldness, fitted, textWidth } from '../drawing/text-extent.ts';
import { dot, openEnd, protectiveEarth } from './earth-symbols.ts';
import { jointMarks, type Openings, openingMarks, small, smallLetters } from './joint-marks.ts';
import { type Joint, jointBetween } from './joints.ts';

/** Places from left to right, the same in every row. */
export const across = {
  frame: 40,
  caseLeft: 104,
  caseRight: 150,
  start: 182,
  box: 310,
  barrier: 440,
  common: 590,
  bar: 716,
};
export const rowHeight = 104;
const half = 6;

/** The heights of a row. */
export function heights(top: number) {
  return { name: top + 14, signal: top + 42, screen: top + 66, barrier: top + 52, foot: top + 96 };
}

export interface GroundingRow {
  readonly wired: WiredPoint;
  readonly joints: readonly Joint[];
}

/** What the drawing of a row asks of the plant around it, looked up once for all of them. */
export interface RowSurroundings {
  readonly kinds: ReadonlyMap<string, NodeKind>;
  /** What each place is joined to by a conductor that is there to earth it. */
  readonly earthing: ReadonlyMap<string, readonly string[]>;
  readonly openings: Openings;
}

export function rowSurroundings({ nodes, conductors }: WiringGraph, openings: Openings): RowSurroundings {
  const earthing = new Map<string, string[]>();
  for (const { from, to, use } of conductors) {
    if (use !== 'earthing') continue;
    const before = earthing.get(from);
    if (before === undefined) earthing.set(from, [to]);
    else before.push(to);
  }
  return { kinds: new Map(nodes.map((each) => [each.id, each.is])), earthing, openings };
}

/** One point from the frame it stands on to the bar of its cabinet. */
export function rowMarks({ wired, joints }: GroundingRow, top: number, around: RowSurroundings): readonly Mark[] {
  const y = heights(top);
  const { openings } = around;
  const { caseLeft, caseRight, start, common, bar, frame } = across;
  const core = jointBetween(joints, 'signal', 'common');
  return [
    label(frame + 18, y.name, nameFitted(wired.point), { size: 12, look: 'strong' }),
    ...drawnAs('case of a transducer', rectangle(caseLeft, top + 32, caseRight - caseLeft, 44, 'paper')),
    small((caseLeft + caseRight) / 2, top + 58, 'case', { anchor: 'middle' }),
    ...jointMarks(
      jointBetween(joints, 'case', 'machine frame'),
      { from: frame + half, to: caseLeft, y: top + 54, look: 'ink', side: 'above' },
      openings,
    ),
    ...jointMarks(
      jointBetween(joints, 'signal', 'case'),
      { from: caseRight, to: start, y: y.signal, look: 'ink', side: 'above' },
      openings,
    ),
    small(start + 6, y.signal - 4, 'return'),
    ...jointMarks(
      core,
      { from: start, to: common, y: y.signal, look: 'ink', side: 'above', at: core?.state === 'joined' ? 248 : 510 },
      openings,
    ),
    ...(core?.state === 'apart' ? [small(510, y.signal - 8, core.by, { anchor: 'middle' })] : []),
    small(common, y.signal - 8, 'common', { anchor: 'middle' }),
    ...jointMarks(
      jointBetween(joints, 'common', 'cabinet earth bar'),
      { from: common, to: bar - half, y: y.signal, look: 'ink', side: 'above', at: 660 },
      openings,
    ),
    ...barrierMarks(wired, joints, top, openings),
    ...screenMarks(wired, joints, top, around),
  ];
}

/** The whole name where it fits; otherwise without its machine, which stands over the drawing. */
function nameFitted({ of, name }: WiredPoint['point']): string {
  const room = (across.barrier - across.frame - 30) / boldness;
  return textWidth(of, 12) <= room ? of : fitted(name, room, 12);
}

/** The return joined to the earth bar of the barriers, which runs past on the right of it. */
function barrierMarks(
  { chain }: WiredPoint,
  joints: readonly Joint[],
  top: number,
  openings: Openings,
): readonly Mark[] {
  const joint = jointBetween(joints, 'signal', 'barrier earth bar');
  if (joint?.state !== 'joined') return [];
  const { signal, barrier } = heights(top);
  const x = across.barrier;
  const name = chain.inLine.find((part) => part.earthed !== undefined)?.of ?? 'barrier';
  const opened = openings.get(joint.name);
  return [
    polyline(
      [
        [x - 16, signal],
        [x - 16, barrier],
        [x, barrier],
      ],
      'ink',
    ),
    dot(x - 16, signal),
    dot(x, barrier),
    small(x + 8, barrier + 4, fitted(name, 250, smallLetters)),
    ...openingMarks(opened, x - 16, signal, 'above'),
  ];
}

function screenMarks(
  { point, wiring }: WiredPoint,
  joints: readonly Joint[],
  top: number,
  around: RowSurroundings,
): readonly Mark[] {
  const { openings } = around;
  const { screen: y } = heights(top);
  const { start, caseRight, bar, box: boxAt } = across;
  const end = 604;
  const box = around.kinds.has(nodeOf.box(point.of));
  const onCase = jointBetween(joints, 'screen', 'case');
  if (onCase === undefined) {
    const words = wiring === undefined ? 'nothing is stated of screen and earths' : 'nothing is stated of the screen';
    return [small(start + 6, y + 3, words, { look: 'italic' })];
  }
  const onBar = jointBetween(joints, 'screen', 'cabinet earth bar');
  const cut = onBar !== undefined && onBar.from.id === nodeOf.farScreen(point.of);
  const look = 'curve-second';
  return [
    ...jointMarks(onCase, { from: caseRight, to: start, y, look, side: 'below' }, openings),
    small(start + 6, y - 4, 'screen'),
    ...(cut
      ? [
          line(start, y, boxAt - 8, y, look),
          line(boxAt + 8, y, end, y, look),
          openEnd(boxAt - 8, y),
          openEnd(boxAt + 8, y),
        ]
      : [line(start, y, end, y, look)]),
    ...jointMarks(onBar, { from: end, to: bar - half, y, look, side: 'below', at: 660 }, openings),
    ...(box ? boxMarks(point.of, joints, top, cut, around) : []),
  ];
}

/** The box around return and screen, whether the screen touches it, and how it is earthed itself. */
function boxMarks(
  of: string,
  joints: readonly Joint[],
  top: number,
  cut: boolean,
  { kinds, earthing, openings }: RowSurroundings,
): readonly Mark[] {
  const x = across.box;
  const { screen, foot } = heights(top);
  const bottom = top + 80;
  const touch = jointBetween(joints, 'screen', 'junction box');
  const stub = cut ? x - 16 : x;
  const earth = earthing.get(nodeOf.box(of))?.[0];
  const onMachine = earth !== undefined && kinds.get(earth) === 'machine frame';
  return [
    ...drawnAs('metal box', rectangle(x - 22, top + 30, 44, bottom - top - 30, 'frame')),
    small(x, top + 27, 'box', { anchor: 'middle' }),
    ...(touch?.state === 'joined'
      ? [
          line(stub, screen, stub, bottom, 'curve-second'),
          dot(stub, screen),
          dot(stub, bottom),
          ...openingMarks(openings.get(touch.name), stub, screen + 8, 'right'),
        ]
      : []),
    ...(touch?.state === 'unknown' ? [label(x, bottom - 1, '?', { size: 12, anchor: 'middle', look: 'strong' })] : []),
    ...(earth === undefined ? [] : onMachine ? footMarks(x, bottom, foot) : protectiveEarth(x, bottom)),
  ];
}

function footMarks(x: number, bottom: number, foot: number): readonly Mark[] {
  return [
    polyline(
      [
        [x - 18, bottom],
        [x - 18, foot],
        [across.frame + half, foot],
      ],
      'thin',
    ),
    dot(across.frame + half, foot),
  ];
}
