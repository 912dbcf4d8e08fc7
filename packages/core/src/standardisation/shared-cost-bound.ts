import { type CostLine, lineUnder } from './part-cost.ts';
import type { ReducedProblem } from './reduced.ts';

/**
 * A bound anybody can check with a pencil: the fixed cost of each part type is shared out among the classes that could
 * use it, no more than the whole of it; every class then takes its cheapest way, shares included. Whatever is chosen,
 * the plant pays at least the sum, because each type in use costs at least what its classes pay for it.
 */
export interface SharedCostBound {
  readonly value: number;
  /** Share of each pair class × part type. */
  readonly share: Float64Array;
  /** What each part type costs at least: fixed + slope · pieces. */
  readonly lines: readonly CostLine[];
  /** Fixed cost of each type that is not shared out. */
  readonly left: Float64Array;
}

/** Lines under the stairs of all types, highest where `counts` pieces are in use. */
export function linesUnder({ of, stairs }: ReducedProblem, counts?: ArrayLike<number>): readonly CostLine[] {
  return of.types.map((type, k) => lineUnder(type, stairs[k]!, Math.max(1, counts?.[k] ?? stairs[k]!.most / 8)));
}

/** Cost of each way of one point: beside + Σ slopes of its parts. */
export function wayCosts({ beside, firstPart, part }: ReducedProblem, lines: readonly CostLine[]): Float64Array {
  return beside.map((cost, w) => {
    let sum = cost;
    for (let entry = firstPart[w]!; entry < firstPart[w + 1]!; entry++) sum += lines[part[entry]!]!.slope;
    return sum;
  });
}

/** What pinned types cost whatever is chosen. */
export function pinnedCost({ of: { types } }: ReducedProblem): number {
  return types.reduce((sum, type) => sum + (type.rule === 'pinned' ? type.keeping : 0), 0);
}

/** The bound shares give; the truth of it needs only that no type's shares add up to more than its fixed cost. */
export function boundOf(problem: ReducedProblem, lines: readonly CostLine[], share: Float64Array): number {
  const cost = wayCosts(problem, lines);
  const { classes, firstWay, firstPart, pair } = problem;
  let sum = pinnedCost(problem);
  for (let c = 0; c < classes.length; c++) {
    let least = Number.POSITIVE_INFINITY;
    for (let w = firstWay[c]!; w < firstWay[c + 1]!; w++) {
      let total = classes[c]!.pieces * cost[w]!;
      for (let entry = firstPart[w]!; entry < firstPart[w + 1]!; entry++) total += share[pair[entry]!]!;
      if (total < least) least = total;
    }
    sum += least;
  }
  return sum;
}
