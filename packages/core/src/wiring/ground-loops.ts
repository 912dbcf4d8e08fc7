import { type Answer, fromAll, valueIfStated } from '../quantity/index.ts';
import { type Cycle, fundamentalCycles, simpleCycles, spanningForest } from './cycles.ts';
import type { Conductor, WiredPoint, WiringGraph } from './graph.ts';

/** A closed way for current through a plant that passes a return or a screen. */
export interface GroundLoop {
  /** The measuring points it passes, in order. */
  readonly points: readonly string[];
  readonly members: Cycle<Conductor>;
  /** Through the return of a signal, where its voltage adds to the signal; otherwise through screens alone. */
  readonly through: 'signal' | 'screen';
  /** Where to open it, what practice opens first standing first. */
  readonly remedy: readonly string[];
  /** Of all its members; unknown until the earth between them is measured. */
  readonly resistance: Answer<number>;
  /** A loop of screens closed on purpose, over a bonding conductor that carries what flows. */
  readonly byDesign: boolean;
}

/**
 * Every independent ground loop of a wiring: with one opened at a time, as many openings as there are loops end them
 * all. Earthing is closed first, bonds before protective conductors, so that a loop is shown over the shortest earth.
 */
export function groundLoops(graph: WiringGraph, points: readonly WiredPoint[]): readonly GroundLoop[] {
  const forest = spanningForest(earthingFirst(graph.conductors));
  const chords = forest.chords.filter((each) => each.use !== 'earthing');
  const bonded = bondedPoints(points);
  return fundamentalCycles({ tree: forest.tree, chords }).map((members) => loopOf(members, bonded));
}

/** Every way at all in which a loop closes, up to a bound; for whoever opens one and asks what is left. */
export function everyGroundLoop(
  graph: WiringGraph,
  points: readonly WiredPoint[],
  bound = 1000,
): { readonly loops: readonly GroundLoop[]; readonly more: boolean } {
  const { cycles, more } = simpleCycles(earthingFirst(graph.conductors), bound);
  const bonded = bondedPoints(points);
  return { loops: cycles.filter(isGroundLoop).map((members) => loopOf(members, bonded)), more };
}

/** Points beside whose cable an equipotential bond is laid. */
export function bondedPoints(points: readonly WiredPoint[]): ReadonlySet<string> {
  const bonded = points.filter((each) => valueIfStated(each.wiring?.values.equipotentialBond) === true);
  return new Set(bonded.map((each) => each.point.of));
}

function isGroundLoop(members: Cycle<Conductor>): boolean {
  return members.some((each) => each.use !== 'earthing');
}

function earthingFirst(conductors: readonly Conductor[]): readonly Conductor[] {
  const earthing = conductors.filter((each) => each.use === 'earthing').sort((a, b) => a.order - b.order);
  return [...earthing, ...conductors.filter((each) => each.use !== 'earthing')];
}

function loopOf(members: Cycle<Conductor>, bonded: ReadonlySet<string>): GroundLoop {
  const through = members.some((each) => each.use === 'signal' && each.name.startsWith('return core'))
    ? 'signal'
    : members.some((each) => each.use === 'screen')
      ? 'screen'
      : 'signal';
  const passed = [...new Set(members.flatMap((each) => (each.point === undefined ? [] : [each.point])))];
  const openable = members.filter((each) => each.remedy !== undefined).sort((a, b) => a.order - b.order);
  return {
    points: passed,
    members,
    through,
    remedy: [...new Set(openable.map((each) => each.remedy!))],
    resistance: fromAll(Object.fromEntries(members.map((each, place) => [place, each.resistance])), (all) =>
      Object.values(all).reduce((sum, each) => sum + each, 0),
    ),
    byDesign: through === 'screen' && passed.every((name) => bonded.has(name)),
  };
}

/** The loop in one line, from node to node: `frame of P-1, case of …, return of …`. */
export function showLoop({ members }: GroundLoop): string {
  return members.map((each) => each.name).join(' – ');
}
