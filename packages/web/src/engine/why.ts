import { type Appraisal, type Policy, type Showing, showMeasure } from '@soundpost/core';
import { explanation } from '@soundpost/documents';
import type { WhyView } from './why-views.ts';
import { citedView } from './working-sheet.ts';

/** Every judgement of one rule about one target, or about the chain as a whole, told in three depths. */
export function why(
  appraisal: Appraisal,
  rule: string,
  target: string | undefined,
  policy: Policy,
  showing: Showing,
): readonly WhyView[] {
  return appraisal.judgements
    .filter((each) => each.rule === rule && each.target === target)
    .map((judgement): WhyView => {
      const told = explanation(judgement, appraisal, appraisal.point, policy, showing);
      return {
        title: told.title,
        what: showMeasure(judgement.what, showing),
        outcome: judgement.outcome,
        sentence: told.sentence,
        prose: told.prose,
        numbers: told.numbers,
        steps: told.derivations.map(({ formula, substituted, notes = [] }) => ({ formula, substituted, notes })),
        sources: told.sources.map(citedView),
      };
    });
}
