import { type Case, type Judgement, type Rule, rule } from '../../chain/rules/rule.ts';
import { type AreaComparison, areaComparison } from '../area-comparison.ts';
import type { Marking } from '../marking.ts';
import { atmosphereOf, type ProtectionLevel } from '../protection-level.ts';

/** A rule about a loop in a classified area: silent where the point lies in none. One file, one line in `rules.ts`. */
export interface AreaRule extends Omit<Rule, 'judge'> {
  judge(compared: AreaComparison, subject: Case): readonly Judgement[];
}

export function areaRule({ judge, ...definition }: AreaRule): Rule {
  return rule({
    ...definition,
    judge: (subject) => {
      const compared = areaComparison(subject.point, subject.prediction.chain);
      return compared === undefined ? [] : judge(compared, subject);
    },
  });
}

/** The marking of a part that speaks of the atmosphere asked for, or its first where none does. */
export function markingFor(markings: readonly Marking[], required: ProtectionLevel): Marking {
  return markings.find((each) => atmosphereOf(each.level) === atmosphereOf(required)) ?? markings[0]!;
}
