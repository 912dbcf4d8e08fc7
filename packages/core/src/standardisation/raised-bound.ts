import type { CostLine } from './part-cost.ts';
import type { ReducedProblem } from './reduced.ts';
import { pinnedCost, type SharedCostBound, wayCosts } from './shared-cost-bound.ts';

/** How long the shares are moved. */
export interface Raising {
  readonly rounds: number;
  /** Cost of a choice already found: where the bound comes within `enough` of it, nothing more is to be gained. */
  readonly found: number;
  readonly enough: number;
}

/**
 * The best shares found by an accelerated gradient method on a smoothed bound: in place of its cheapest way each class
 * takes the soft minimum −μ ln Σ exp(−cost/μ) of its ways, shares included, whose slope says how much of each type it
 * takes; shares are moved along it and each type's brought back to its fixed cost; μ is halved as the rounds go on.
 * The value given is that of the plain bound, true for whatever shares, at the best round. Also says how much of each
 * type the classes took there, by which a good choice can be guessed. Method: smoothing and acceleration after
 * Nesterov, from memory; nothing rests on it, since any shares prove their own bound.
 */
export function raisedBound(
  problem: ReducedProblem,
  lines: readonly CostLine[],
  { rounds, found, enough }: Raising,
): SharedCostBound & { readonly taken: Float64Array } {
  const { pairs, pairPart } = problem;
  const types = problem.of.types.length;
  const ofType = pairsByType(pairPart, types);
  const soft = softClasses(problem, lines);
  let share: Float64Array = evenShares(problem, lines, ofType);
  let before: Float64Array = share.slice();
  const ahead = share.slice();
  const slope = new Float64Array(pairs);
  const best = share.slice();
  let value = soft.plain(share);
  let mu = Math.max((found - value) / 4, 1e-3 * Math.abs(found)) / Math.max(1, problem.classes.length);
  const stages = 14;
  const perStage = Math.max(20, Math.floor(rounds / stages));
  for (let stage = 0; stage < stages && found - value > enough; stage++) {
    let momentum = 1;
    for (let round = 0; round < perStage; round++) {
      const next = (1 + Math.sqrt(1 + 4 * momentum * momentum)) / 2;
      const forward = (momentum - 1) / next;
      momentum = next;
      for (let index = 0; index < pairs; index++) {
        ahead[index] = share[index]! + forward * (share[index]! - before[index]!);
      }
      soft.slopes(ahead, mu, slope);
      [before, share] = [share, before];
      for (let index = 0; index < pairs; index++) share[index] = ahead[index]! + mu * slope[index]!;
      for (let k = 0; k < types; k++) ontoWhole(share, ofType.first, ofType.list, k, lines[k]!.fixed);
      if (round % 10 !== 9) continue;
      const reached = soft.plain(share);
      if (reached <= value) continue;
      value = reached;
      best.set(share);
      if (found - value <= enough) break;
    }
    mu /= 2;
  }
  soft.slopes(best, mu * 2, slope);
  const taken = new Float64Array(types);
  for (let index = 0; index < pairs; index++) {
    const k = pairPart[index]!;
    taken[k] = Math.max(taken[k]!, slope[index]!);
  }
  return { value, share: best, lines, left: leftOver(best, pairPart, lines), taken };
}

/** The classes as the bound sees them: their least cost, plain, or softened with its slopes along the shares. */
function softClasses(problem: ReducedProblem, lines: readonly CostLine[]) {
  const { classes, firstWay, firstPart, pair } = problem;
  const cost = wayCosts(problem, lines);
  for (let c = 0; c < classes.length; c++) {
    for (let w = firstWay[c]!; w < firstWay[c + 1]!; w++) cost[w]! *= classes[c]!.pieces;
  }
  const base = pinnedCost(problem);
  const total = new Float64Array(cost.length);
  const withShares = (share: Float64Array, c: number): number => {
    let least = Number.POSITIVE_INFINITY;
    for (let w = firstWay[c]!; w < firstWay[c + 1]!; w++) {
      let sum = cost[w]!;
      for (let entry = firstPart[w]!; entry < firstPart[w + 1]!; entry++) sum += share[pair[entry]!]!;
      total[w] = sum;
      if (sum < least) least = sum;
    }
    return least;
  };
  return {
    plain(share: Float64Array): number {
      let sum = base;
      for (let c = 0; c < classes.length; c++) sum += withShares(share, c);
      return sum;
    },
    slopes(share: Float64Array, mu: number, into: Float64Array): void {
      into.fill(0);
      for (let c = 0; c < classes.length; c++) {
        const least = withShares(share, c);
        let sum = 0;
        for (let w = firstWay[c]!; w < firstWay[c + 1]!; w++) {
          const over = (least - total[w]!) / mu;
          const weight = over < -40 ? 0 : Math.exp(over);
          total[w] = weight;
          sum += weight;
        }
        for (let w = firstWay[c]!; w < firstWay[c + 1]!; w++) {
          if (total[w] === 0) continue;
          const part = total[w]! / sum;
          for (let entry = firstPart[w]!; entry < firstPart[w + 1]!; entry++) into[pair[entry]!]! += part;
        }
      }
    },
  };
}

interface PairsByType {
  readonly first: Int32Array;
  readonly list: Int32Array;
}

function pairsByType(pairPart: Int32Array, types: number): PairsByType {
  const first = new Int32Array(types + 1);
  for (const k of pairPart) first[k + 1]!++;
  for (let k = 0; k < types; k++) first[k + 1]! += first[k]!;
  const at = first.slice();
  const list = new Int32Array(pairPart.length);
  for (let index = 0; index < pairPart.length; index++) list[at[pairPart[index]!]!++] = index;
  return { first, list };
}

/** To begin with: each type's fixed cost in proportion to the points that could use it. */
function evenShares(problem: ReducedProblem, lines: readonly CostLine[], { first, list }: PairsByType): Float64Array {
  const share = new Float64Array(problem.pairs);
  for (let k = 0; k + 1 < first.length; k++) {
    let points = 0;
    for (let at = first[k]!; at < first[k + 1]!; at++) points += problem.classes[problem.pairClass[list[at]!]!]!.pieces;
    for (let at = first[k]!; at < first[k + 1]!; at++) {
      const index = list[at]!;
      share[index] = (lines[k]!.fixed * problem.classes[problem.pairClass[index]!]!.pieces) / points;
    }
  }
  return share;
}

/** The nearest shares, none below zero, that add up to no more than the whole. */
function ontoWhole(share: Float64Array, first: Int32Array, list: Int32Array, k: number, whole: number): void {
  let sum = 0;
  for (let at = first[k]!; at < first[k + 1]!; at++) {
    const index = list[at]!;
    if (share[index]! < 0) share[index] = 0;
    sum += share[index]!;
  }
  if (sum <= whole) return;
  let cut = 0;
  let count = first[k + 1]! - first[k]!;
  // Each pass finds the cut for those still above it; few are needed.
  for (;;) {
    const next = (sum - whole) / count;
    if (next <= cut + 1e-15 * whole) break;
    cut = next;
    sum = 0;
    count = 0;
    for (let at = first[k]!; at < first[k + 1]!; at++) {
      const value = share[list[at]!]!;
      if (value > cut) {
        sum += value;
        count++;
      }
    }
    if (count === 0) break;
  }
  let total = 0;
  for (let at = first[k]!; at < first[k + 1]!; at++) {
    const index = list[at]!;
    share[index] = Math.max(0, share[index]! - cut);
    total += share[index]!;
  }
  // Rounding must not let the shares exceed the whole: the bound would not be one.
  if (total > whole) for (let at = first[k]!; at < first[k + 1]!; at++) share[list[at]!]! *= whole / total;
}

function leftOver(share: Float64Array, pairPart: Int32Array, lines: readonly CostLine[]): Float64Array {
  const left = Float64Array.from(lines, (line) => line.fixed);
  for (let index = 0; index < share.length; index++) left[pairPart[index]!]! -= share[index]!;
  return left;
}
