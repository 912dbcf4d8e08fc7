import { type Appraisal, type Policy, type Showing, showMeasure } from '@soundpost/core';
import { type Explained, explanation } from '@soundpost/documents';
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
      const { derivations, prose, ...told } = explanation(judgement, appraisal, appraisal.point, policy, showing);
      return {
        ...whyView({ ...told, steps: derivations }),
        what: showMeasure(judgement.what, showing),
        outcome: judgement.outcome,
        prose,
      };
    });
}

/** A number of the record, as the page tells it. */
export function whyView({ title, sentence, numbers, steps, sources, typed }: Explained): WhyView {
  return {
    title,
    sentence,
    prose: '',
    numbers,
    steps: steps.map(({ formula, substituted, notes = [], worked }) => ({
      formula,
      substituted,
      notes,
      working: worked?.working,
    })),
    sources: sources.map(citedView),
    typed:
      typed === undefined
        ? undefined
        : { written: typed.written, at: typed.at, status: typed.status, source: typed.source },
  };
}
