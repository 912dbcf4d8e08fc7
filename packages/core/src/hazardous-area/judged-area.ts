import type { Judgement } from '../chain/rules/rule.ts';
import type { AreaComparison } from './area-comparison.ts';
import { notPassedWording, notProvenWording, passedWording } from './caution.ts';
import { areaRules } from './rules/rules.ts';

/** A comparison with what the rules of this room said of it, and the words for all of it together. */
export interface JudgedArea extends AreaComparison {
  readonly judgements: readonly Judgement[];
  /** Passed, not passed, or not proven: always for these certificate values, never more. */
  readonly wording: string;
}

export function judgedArea(compared: AreaComparison, all: readonly Judgement[]): JudgedArea {
  const judgements = all.filter((each) => areaRules.some((rule) => rule.id === each.rule));
  return { ...compared, judgements, wording: wordingOf(judgements) };
}

/** One part that does not fit is enough for `not passed`; one that is not told, for `not proven`. */
function wordingOf(judgements: readonly Judgement[]): string {
  if (judgements.some((each) => each.outcome === 'fails')) return notPassedWording;
  return judgements.some((each) => each.outcome === 'cannot tell') ? notProvenWording : passedWording;
}
