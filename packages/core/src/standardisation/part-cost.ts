import type { PartType } from './part-type.ts';
import { spareSteps } from './spares.ts';

/** What n pieces in use of one type cost, as stairs: the spares grow by steps. */
export interface CostStairs {
  /** Greatest number in use for which the stairs are worked out. */
  readonly most: number;
  readonly spares: readonly number[];
  readonly upTo: readonly number[];
}

export function costStairs(type: PartType, most: number, serviceLevel: number): CostStairs {
  return { most, ...spareSteps(most, type.failuresPerLeadTime, serviceLevel) };
}

/** Spares to be kept for n pieces in use. */
export function sparesAt(stairs: CostStairs, n: number): number {
  if (n === 0) return 0;
  let low = 0;
  let high = stairs.upTo.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (stairs.upTo[middle]! >= n) high = middle;
    else low = middle + 1;
  }
  return stairs.spares[low]!;
}

/** Pieces to buy for n in use: g = max(0, n + spares(n) − in stock). */
export function piecesToBuy(type: PartType, stairs: CostStairs, n: number): number {
  return Math.max(0, n + sparesAt(stairs, n) - type.inStock);
}

/** Cost of n pieces in use: keeping + price · pieces to buy; a type not in use costs nothing, a pinned one its keeping. */
export function costOf(type: PartType, stairs: CostStairs, n: number): number {
  if (n === 0) return type.rule === 'pinned' ? type.keeping : 0;
  return type.keeping + type.price * piecesToBuy(type, stairs, n);
}

/** A straight line under the stairs: fixed + slope · n ≤ cost of n for every n from 1 to most, with fixed ≥ 0. */
export interface CostLine {
  readonly fixed: number;
  readonly slope: number;
}

/**
 * The line under the stairs that lies highest at `near` pieces: the edge of their lower convex hull above `near`, or,
 * where that edge would start below zero, the steepest line through the origin. Only the right ends of the steps and
 * n = 1 can carry the hull, since within a step the stairs rise with the price at least.
 */
export function lineUnder(type: PartType, stairs: CostStairs, near: number): CostLine {
  const keeping = type.rule === 'pinned' ? 0 : type.keeping;
  const cost = (n: number) => keeping + type.price * piecesToBuy(type, stairs, n);
  const corners = cornersOf(type, stairs).map((n) => ({ n, cost: cost(n) }));
  const hull: { n: number; cost: number }[] = [];
  for (const corner of corners) {
    while (hull.length > 1 && turnsDown(hull.at(-2)!, hull.at(-1)!, corner)) hull.pop();
    hull.push(corner);
  }
  const right = hull.findIndex(({ n }) => n >= near);
  const to = hull[Math.max(1, right)] ?? hull[0]!;
  const from = hull[Math.max(1, right) - 1]!;
  const slope = to.n === from.n ? type.price : (to.cost - from.cost) / (to.n - from.n);
  const fixed = from.cost - slope * from.n;
  if (fixed >= 0) return { fixed, slope };
  return { fixed: 0, slope: Math.min(...corners.map((corner) => corner.cost / corner.n)) };
}

/** Numbers in use where the stairs can touch a line from above: 1, the right end of each step, where the stock ends. */
function cornersOf(type: PartType, stairs: CostStairs): readonly number[] {
  const stockEnds = stairs.upTo.flatMap((upTo, index) => {
    const first = (stairs.upTo[index - 1] ?? 0) + 1;
    const ends = type.inStock - stairs.spares[index]!;
    return ends >= first && ends <= upTo ? [ends] : [];
  });
  return [...new Set([1, ...stairs.upTo, ...stockEnds])].sort((a, b) => a - b);
}

type Corner = { readonly n: number; readonly cost: number };

function turnsDown(a: Corner, b: Corner, c: Corner): boolean {
  return (b.cost - a.cost) * (c.n - b.n) >= (c.cost - b.cost) * (b.n - a.n);
}
