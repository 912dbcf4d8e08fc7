import type { Choice } from './choice.ts';
import type { ReducedProblem } from './reduced.ts';
import { type SharedCostBound, wayCosts } from './shared-cost-bound.ts';

/** What a bound and a choice leave undecided: no better choice takes a type or a way that is marked out. */
export interface LeftToDecide {
  /** 1 where a better choice could keep the type. */
  readonly types: Uint8Array;
  /** 1 where a better choice could take the way. */
  readonly ways: Uint8Array;
}

/**
 * A type in use costs at least what is left of its fixed cost above the bound; a point on a dearer way at least the
 * difference. What would so pass the cost of the choice at hand is out, and the optimum stays what it was.
 */
export function leftToDecide(problem: ReducedProblem, bound: SharedCostBound, choice: Choice): LeftToDecide {
  const room = choice.cost - bound.value;
  const slack = 1e-9 * Math.abs(choice.cost);
  const types = Uint8Array.from(problem.of.types, ({ rule }, k) =>
    rule === 'pinned' || bound.left[k]! <= room + slack ? 1 : 0,
  );
  const cost = wayCosts(problem, bound.lines);
  const ways = new Uint8Array(cost.length);
  const { classes, firstWay, firstPart, pair, part } = problem;
  for (let c = 0; c < classes.length; c++) {
    const { pieces } = classes[c]!;
    let least = Number.POSITIVE_INFINITY;
    for (let w = firstWay[c]!; w < firstWay[c + 1]!; w++) {
      for (let entry = firstPart[w]!; entry < firstPart[w + 1]!; entry++) {
        cost[w]! += bound.share[pair[entry]!]! / pieces;
      }
      least = Math.min(least, cost[w]!);
    }
    const takenNow = new Set(choice.taken[c]!.map(({ way }) => way));
    for (let w = firstWay[c]!; w < firstWay[c + 1]!; w++) {
      let open = cost[w]! - least <= room + slack;
      for (let entry = firstPart[w]!; entry < firstPart[w + 1]!; entry++) open &&= types[part[entry]!] === 1;
      ways[w] = open || takenNow.has(w) ? 1 : 0;
    }
  }
  for (const taken of choice.taken.flat()) {
    for (let entry = firstPart[taken.way]!; entry < firstPart[taken.way + 1]!; entry++) types[part[entry]!] = 1;
  }
  return { types, ways };
}
