import { costOf } from './part-cost.ts';
import type { ReducedProblem } from './reduced.ts';

/** Of each class, how many of its points go which way; most classes go one way whole. */
export interface Choice {
  /** For each class the rows of ways taken, with the points that take them. */
  readonly taken: readonly (readonly { readonly way: number; readonly points: number }[])[];
  /** Pieces in use of each part type. */
  readonly counts: Int32Array;
  readonly cost: number;
}

/** A choice with its true cost: Σ cost of each type at its pieces in use + Σ beside · points. */
export function choiceOf(problem: ReducedProblem, taken: Choice['taken']): Choice {
  const { of, stairs, firstPart, part, beside } = problem;
  const counts = new Int32Array(of.types.length);
  let cost = 0;
  for (const ways of taken) {
    for (const { way, points } of ways) {
      cost += beside[way]! * points;
      for (let entry = firstPart[way]!; entry < firstPart[way + 1]!; entry++) counts[part[entry]!]! += points;
    }
  }
  for (const [k, type] of of.types.entries()) cost += costOf(type, stairs[k]!, counts[k]!);
  return { taken, counts, cost };
}

/** The same from one way for each class. */
export function wholeChoice(problem: ReducedProblem, ways: Int32Array): Choice {
  return choiceOf(
    problem,
    problem.classes.map(({ pieces }, c) => [{ way: ways[c]!, points: pieces }]),
  );
}
