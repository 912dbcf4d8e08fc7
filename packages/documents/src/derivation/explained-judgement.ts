import type { Appraisal, Judgement, Policy, Showing } from '@soundpost/core';
import type { Explained } from './explained.ts';
import { explanation } from './explanation.ts';

/** The judgement behind a number, told as any number is. */
export function explainedJudgement(
  judgement: Judgement,
  appraisal: Appraisal,
  policy: Policy,
  showing: Showing,
): Explained {
  const { title, sentence, prose, numbers, derivations, sources } = explanation(
    judgement,
    appraisal,
    appraisal.point,
    policy,
    showing,
  );
  return { title, sentence: `${sentence} ${prose}`.trim(), numbers, steps: derivations, sources };
}
