import { type Choice, wholeChoice } from './choice.ts';
import { type LeftToDecide, leftToDecide } from './left-to-decide.ts';
import type { KeepingProblem } from './part-type.ts';
import { raisedBound } from './raised-bound.ts';
import { type ReducedProblem, reduced } from './reduced.ts';
import { refined } from './refined.ts';
import { searched } from './search.ts';
import { linesUnder, type SharedCostBound } from './shared-cost-bound.ts';

/** A good choice, a bound under every choice, and what the two leave for a solver to decide. */
export interface PreparedKeeping {
  readonly problem: ReducedProblem;
  readonly choice: Choice;
  readonly bound: SharedCostBound;
  readonly left: LeftToDecide;
}

/** How much of a type the classes must take in the bound for it to be in a first set. */
const leanings = [0.05, 0.2, 0.4, 0.6, 0.8] as const;

/** Searches, raises the bound with the lines under what was found, and searches again from what the bound leans to. */
export function preparedKeeping(of: KeepingProblem, rounds = 1500): PreparedKeeping {
  const problem = reduced(of);
  const all = new Uint8Array(of.types.length).fill(1);
  const limit = of.atMost;
  let lines = linesUnder(problem);
  const better = (choice: Choice) => (limit === undefined ? refined(problem, choice) : choice);
  let choice = better(wholeChoice(problem, searched(problem, lines, all, limit)));
  let bound: (SharedCostBound & { readonly taken: Float64Array }) | undefined;
  // The lines touch the stairs where the first choice stands; a better choice may stand elsewhere.
  for (let pass = 0; pass < 2; pass++) {
    lines = linesUnder(problem, choice.counts);
    const raised = raisedBound(problem, lines, {
      rounds: pass === 0 ? Math.ceil(rounds / 3) : rounds,
      found: choice.cost,
      enough: 1e-9 * Math.abs(choice.cost),
    });
    if (bound === undefined || raised.value > bound.value) bound = raised;
    for (const leaning of leanings) {
      const open = Uint8Array.from(of.types, ({ rule }, k) =>
        rule === 'pinned' || raised.taken[k]! > leaning ? 1 : 0,
      );
      const other = better(wholeChoice(problem, searched(problem, lines, open, limit)));
      if (within(other, limit) && (other.cost < choice.cost || !within(choice, limit))) choice = other;
    }
  }
  return { problem, choice, bound: bound!, left: leftToDecide(problem, bound!, choice) };
}

/** Whether a choice keeps no more of the listed types than the owner allows. */
export function within({ counts }: Choice, limit: KeepingProblem['atMost']): boolean {
  return limit === undefined || limit.types.filter((k) => counts[k]! > 0).length <= limit.count;
}
