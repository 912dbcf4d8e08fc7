import type { MeasuringChain } from '../chain/chain.ts';
import type { Judgement } from '../chain/rules/rule.ts';
import type { MeasuringPoint } from '../demand/measuring-point.ts';
import {
  type Answer,
  answer,
  answerOf,
  type Missing,
  type Sheet,
  type Stated,
  valueIfStated,
} from '../quantity/index.ts';
import { joinedTo, type Line } from './cycles.ts';
import { Drawing, earthed, mainEarth, nodeOf, unmeasured } from './drawing.ts';
import { drawScreen } from './screen.ts';
import type { wiringSheet } from './statement.ts';

/** What a node of the wiring is. */
export type NodeKind =
  | 'main earth'
  | 'machine frame'
  | 'case'
  | 'signal'
  | 'screen'
  | 'junction box'
  | 'barrier earth bar'
  | 'cabinet earth bar'
  | 'common';

export interface WiringNode {
  readonly id: string;
  readonly is: NodeKind;
}

/** What a conductor is for. `earthing` is meant to be meshed; a loop through any other is a ground loop. */
export type ConductorUse = 'earthing' | 'signal' | 'screen';

/** Something that joins two nodes. What is isolated joins nothing, and is kept among the isolations. */
export interface Conductor extends Line {
  readonly name: string;
  readonly use: ConductorUse;
  readonly resistance: Answer<number>;
  /** The measuring point it belongs to; the earthing of the plant belongs to none. */
  readonly point?: string;
  /** What opens it; absent where it must not be opened. */
  readonly remedy?: string;
  /** How soon it is the one to open, the smallest of a loop first; of the earthing, how soon a loop closes over it. */
  readonly order: number;
}

/** A place where two nodes are kept apart, and by what. */
export interface IsolatedJoint extends Line {
  readonly by: string;
  readonly point: string;
}

/** Two nodes of which it is not known whether they are joined. */
export interface UnknownJoint extends Line {
  readonly point: string;
  readonly joint: string;
  readonly missing: readonly Missing[];
}

/** A measuring point as far as its wiring goes. */
export interface WiredPoint {
  readonly point: MeasuringPoint;
  readonly chain: MeasuringChain;
  /** Absent where nothing is stated of its screen and earths. */
  readonly wiring?: Sheet<typeof wiringSheet>;
  /** How the rules of the chain judged it: what they refuse is not said twice. */
  readonly judgements?: readonly Judgement[];
}

export interface WiringGraph {
  readonly nodes: readonly WiringNode[];
  readonly conductors: readonly Conductor[];
  readonly isolations: readonly IsolatedJoint[];
  /** Joints of which it is not known whether they conduct. */
  readonly unknown: readonly UnknownJoint[];
}

/** What is joined to what over a whole plant. A chain that measures without a common wire to the machine adds little. */
export function wiringGraph(points: readonly WiredPoint[]): WiringGraph {
  const drawing = new Drawing();
  drawing.node(mainEarth, 'main earth');
  for (const each of points) drawPoint(each, drawing);
  return drawing.graph();
}

/** Every node that is joined to the main earth, over whatever way. */
export function earthedNodes(graph: WiringGraph): ReadonlySet<string> {
  return joinedTo(mainEarth, graph.conductors);
}

/** Frame, case, return, common and bars of one point, and its screen where anything is said of it. */
function drawPoint(wired: WiredPoint, drawing: Drawing): void {
  const { point, wiring } = wired;
  const frame = drawing.node(nodeOf.frame(point.machine), 'machine frame');
  earthed(drawing, frame);
  const cabinet = cabinetOf(wired);
  const bar = drawing.node(`earth bar of ${cabinet}`, 'cabinet earth bar');
  // A collector floats, unless somebody says it is earthed: on its charger, on a computer.
  if (point.installation === 'online' || valueIfStated(wiring?.values.inputEarthed) === true) earthed(drawing, bar);
  if (valueIfStated(wiring?.values.equipotentialBond) === true) {
    drawing.conductor({
      name: nodeOf.bond(point.machine),
      use: 'earthing',
      from: frame,
      to: bar,
      resistance: unmeasured(nodeOf.bond(point.machine)),
      order: 8,
    });
  }
  drawSignal(wired, frame, bar, drawing);
  if (wiring !== undefined) drawScreen(wired, wiring, frame, bar, drawing);
}

/** The cabinet as stated, otherwise the input for short; a portable one is a place of its own at every point. */
function cabinetOf({ point, chain, wiring }: WiredPoint): string {
  const stated = valueIfStated(wiring?.values.cabinet) ?? chain.input.of;
  return point.installation === 'portable' ? `${stated} at ${point.of}` : stated;
}

/** From the case on its surface along the return of the pair to the common of the input, and every earth on the way. */
function drawSignal(wired: WiredPoint, frame: string, bar: string, drawing: Drawing): void {
  const { point, chain, wiring } = wired;
  const at = point.of;
  const shell = drawing.node(nodeOf.case(at), 'case');
  const near = drawing.node(nodeOf.signal(at), 'signal');
  const own = { point: at, resistance: answer(0) } as const;
  const touches = chain.transducer.reference === 'casing' && !chain.mount.isolates;
  drawing.joint(
    answer(touches),
    {
      ...own,
      name: `${shell} on the machine`,
      use: 'signal',
      from: shell,
      to: frame,
      remedy: 'an isolating stud, its compliance counted',
      order: 2,
    },
    chain.transducer.reference === 'casing'
      ? 'isolating mount'
      : `holder of ${chain.parts.transducer.name}, which its signal does not touch`,
  );
  const { sheet } = chain.parts.transducer;
  const isolated = answerOf(
    (sheet as Sheet).values.caseIsolated as Stated<boolean> | undefined,
    sheet.of,
    'case isolated',
  );
  drawing.joint(
    isolated.known ? answer(!isolated.value) : isolated,
    {
      ...own,
      name: `signal ground on the ${shell}`,
      use: 'signal',
      from: near,
      to: shell,
      remedy: 'a case-isolated transducer',
      order: 1,
    },
    'case-isolated transducer',
  );
  const barrier = chain.inLine.find((part) => part.earthed !== undefined);
  if (barrier !== undefined) {
    const earth = drawing.node(`barrier earth bar of ${cabinetOf(wired)}`, 'barrier earth bar');
    earthed(drawing, earth);
    drawing.conductor({
      ...own,
      name: `earth of the barrier ${barrier.of}`,
      use: 'signal',
      from: near,
      to: earth,
      remedy: 'a galvanic isolator in place of the barrier',
      order: 5,
    });
  }
  const common = drawing.node(nodeOf.common(at), 'common');
  drawing.joint(
    answer(chain.inLine.every((part) => part.isolation === undefined)),
    {
      point: at,
      name: `return core of ${at}`,
      use: 'signal',
      from: near,
      to: common,
      resistance: returnCore(chain),
      remedy: 'a galvanic isolator in the line',
      order: 4,
    },
    'galvanic isolator',
  );
  const stated = wiring?.values.inputEarthed;
  // An online input is earthed in its cabinet unless a barrier earths the line there; a portable one floats.
  const usual = point.installation === 'online' && barrier === undefined;
  drawing.joint(
    stated === undefined ? answer(usual) : answerOf(stated, at, 'whether the input is earthed'),
    {
      ...own,
      name: `earth of the ${common}`,
      use: 'signal',
      from: common,
      to: bar,
      remedy: 'an input that floats against its cabinet',
      order: 3,
    },
    'input that floats',
  );
}

function returnCore({ cable, line }: MeasuringChain): Answer<number> {
  const cables = line.flatMap((each) => (each.is === 'cable' ? [each.cable] : []));
  return (cables.length === 0 ? [cable] : cables).reduce<Answer<number>>((sum, { loopResistance }) => {
    if (!sum.known) return sum;
    return loopResistance.known ? answer(sum.value + loopResistance.value / 2) : loopResistance;
  }, answer(0));
}
