import { type Finding, inOrderOfWeight } from '../finding/finding.ts';
import { type Answer, answer, unanswered } from '../quantity/index.ts';
import { fixed } from './form.ts';
import { kindOf } from './kinds.ts';
import { trainRules } from './rules/rules.ts';
import { type SolvedTrain, solvedTrain } from './solved-train.ts';
import { speedRange } from './speed-range.ts';
import type { Train } from './train.ts';

/** Everything doubtful about a train, gravest first. */
export function trainFindings(train: Train): readonly Finding[] {
  const solved = solvedTrain(train);
  const ofElements = train.elements.flatMap((element) =>
    kindOf(element).doubts(element.sheet, roleSpeeds(solved, element.shafts)),
  );
  return inOrderOfWeight([...trainRules.flatMap((rule) => rule.check(solved)), ...ofElements]);
}

type Range = { readonly low: number; readonly high: number };

function roleSpeeds(
  solved: SolvedTrain,
  shafts: Readonly<Record<string, string>>,
): Readonly<Record<string, Answer<Range>>> {
  return Object.fromEntries(
    Object.entries(shafts).map(([role, shaft]) => [
      role,
      shaft === fixed ? answer({ low: 0, high: 0 }) : speedOf(solved, shaft),
    ]),
  );
}

function speedOf(solved: SolvedTrain, shaft: string): Answer<Range> {
  const range = speedRange(solved, shaft);
  return range === undefined ? unanswered([{ of: solved.train.of, what: `speed of shaft '${shaft}'` }]) : answer(range);
}
