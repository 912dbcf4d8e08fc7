import { type Plant, type Question, shelves } from '@soundpost/core';
import type { QuestionView } from './views.ts';

/** A question with what hangs on its answer, and where it can be answered. */
export function questionView({ of, what, ask, turns, judgements, points }: Question, plant: Plant): QuestionView {
  return { of, what, ask, why: whyOf(turns, judgements, points), points, part: partOf(of, plant) };
}

function whyOf(turns: Question['turns'], judgements: number, points: Question['points']): string {
  const at = `at ${named(points)}`;
  if (turns === 'nothing') return `Neither of its bounds changes a verdict ${at}.`;
  if (turns === 'verdict') return `The answer can turn the verdict ${at}.`;
  if (judgements === 0) return `No judgement waits for it; a budget, a set point or a data sheet lacks it ${at}.`;
  return judgements === 1 ? `1 judgement waits for it ${at}.` : `${judgements} judgements wait for it ${at}.`;
}

/** The first few by name: a part of a large plant stands at a thousand points. */
function named(points: readonly string[]): string {
  const first = points.slice(0, 3).join(', ');
  return points.length <= 3 ? first : `${first} and ${points.length - 3} more`;
}

/** The name of the part whose sheet calls itself so. */
function partOf(of: string, { catalogue }: Plant): string | undefined {
  for (const shelf of shelves) {
    const found = (catalogue[shelf] as readonly { name: string; sheet: { of: string } }[]).find(
      ({ sheet }) => sheet.of === of,
    );
    if (found !== undefined) return found.name;
  }
  return undefined;
}
