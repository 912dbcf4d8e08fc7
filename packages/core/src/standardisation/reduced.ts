import { type CostStairs, costStairs } from './part-cost.ts';
import type { KeepingProblem, Need, Way } from './part-type.ts';

/** Requirements with the same ways are one class; of its ways only those are kept that could be in a best choice. */
export interface NeedClass {
  readonly members: readonly Need[];
  /** Points of all members. */
  readonly pieces: number;
  readonly ways: readonly Way[];
}

/** The problem with all that cannot change its optimum taken away, in rows for the inner loops. */
export interface ReducedProblem {
  readonly of: KeepingProblem;
  readonly classes: readonly NeedClass[];
  /** Requirements no way can meet, given what is forbidden. */
  readonly unmet: readonly Need[];
  readonly stairs: readonly CostStairs[];
  /** The ways of class c are the rows from `firstWay[c]` up to `firstWay[c + 1]`. */
  readonly firstWay: Int32Array;
  /** The parts of way w are the entries of `part` from `firstPart[w]` up to `firstPart[w + 1]`. */
  readonly firstPart: Int32Array;
  readonly part: Int32Array;
  /** Place of each entry among the pairs class × part type. */
  readonly pair: Int32Array;
  readonly beside: Float64Array;
  readonly pairs: number;
  /** Part type of each pair. */
  readonly pairPart: Int32Array;
  /** Class of each pair. */
  readonly pairClass: Int32Array;
}

/**
 * Merges equal requirements and leaves out ways that another one is never dearer than: one that takes no part the other
 * does not take, and costs no more beside. The optimum stays what it was, since the cost of a type never falls as more
 * pieces are in use.
 */
export function reduced(of: KeepingProblem): ReducedProblem {
  const byWays = new Map<string, { members: Need[]; ways: readonly Way[] }>();
  const unmet: Need[] = [];
  for (const requirement of of.requirements) {
    const ways = undominated(
      requirement.ways.filter((way) => way.parts.every((k) => of.types[k]!.rule !== 'forbidden')),
    );
    if (ways.length === 0) {
      unmet.push(requirement);
      continue;
    }
    const key = ways.map((way) => `${way.parts.join(',')}:${way.beside}`).join(';');
    const known = byWays.get(key);
    if (known === undefined) byWays.set(key, { members: [requirement], ways });
    else known.members.push(requirement);
  }
  const classes = [...byWays.values()].map(({ members, ways }) => ({
    members,
    ways,
    pieces: members.reduce((sum, { points }) => sum + points.length, 0),
  }));
  const most = new Int32Array(of.types.length);
  for (const { pieces, ways } of classes) {
    for (const k of new Set(ways.flatMap(({ parts }) => parts))) most[k]! += pieces;
  }
  const stairs = of.types.map((type, k) => costStairs(type, Math.max(1, most[k]!), of.serviceLevel));
  return { of, classes, unmet, stairs, ...inRows(classes) };
}

/** Cheapest first; equal ones by name, so that the same file gives the same choice. */
function undominated(ways: readonly Way[]): readonly Way[] {
  const sorted = [...ways].sort(
    (a, b) => a.beside - b.beside || a.parts.length - b.parts.length || (a.name < b.name ? -1 : 1),
  );
  const kept: Way[] = [];
  for (const way of sorted) {
    const mine = new Set(way.parts);
    if (!kept.some(({ parts }) => parts.every((k) => mine.has(k)))) kept.push(way);
  }
  return kept;
}

function inRows(classes: readonly NeedClass[]) {
  const ways = classes.reduce((sum, each) => sum + each.ways.length, 0);
  const entries = classes.reduce((sum, each) => sum + each.ways.reduce((inner, way) => inner + way.parts.length, 0), 0);
  const firstWay = new Int32Array(classes.length + 1);
  const firstPart = new Int32Array(ways + 1);
  const part = new Int32Array(entries);
  const pair = new Int32Array(entries);
  const beside = new Float64Array(ways);
  const pairPart: number[] = [];
  const pairClass: number[] = [];
  let w = 0;
  let entry = 0;
  for (const [c, each] of classes.entries()) {
    const pairOf = new Map<number, number>();
    for (const way of each.ways) {
      beside[w] = way.beside;
      for (const k of way.parts) {
        let place = pairOf.get(k);
        if (place === undefined) {
          place = pairPart.length;
          pairOf.set(k, place);
          pairPart.push(k);
          pairClass.push(c);
        }
        part[entry] = k;
        pair[entry++] = place;
      }
      firstPart[++w] = entry;
    }
    firstWay[c + 1] = w;
  }
  return {
    firstWay,
    firstPart,
    part,
    pair,
    beside,
    pairs: pairPart.length,
    pairPart: Int32Array.from(pairPart),
    pairClass: Int32Array.from(pairClass),
  };
}
