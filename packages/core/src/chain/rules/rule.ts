import type { MeasuringPoint } from '../../demand/measuring-point.ts';
import type { Policy } from '../../demand/policy.ts';
import type { Target } from '../../demand/target.ts';
import { type Measure, measured, type Said, said, showMeasure } from '../../finding/measure.ts';
import { type Answer, type Missing, type Showing, theMissing } from '../../quantity/index.ts';
import type { Clause } from '../../source/source.ts';
import type { Prediction } from '../prediction.ts';

/** What a rule looks at: one predicted chain at one point. */
export interface Case {
  readonly point: MeasuringPoint;
  readonly prediction: Prediction;
  readonly policy: Policy;
}

/** From worst to best. `cannot tell` is no pass: something that decides is not known. */
export const outcomes = ['fails', 'cannot tell', 'warns', 'meets'] as const;
export type Outcome = (typeof outcomes)[number];

/** One rule applied to one target, or to the chain as a whole: what came out, against what, and by how much. */
export interface Judgement {
  readonly rule: string;
  /** The target it speaks of; absent where it speaks of the whole chain. */
  readonly target?: string;
  readonly outcome: Outcome;
  /** What is judged: `response error`, `worst peak`. */
  readonly what: Said;
  readonly found: Measure;
  readonly limit: Measure;
  readonly frequency?: number;
  /** Distance from the limit in decibels, positive inside; absent where the question is yes or no. */
  readonly margin?: number;
  /** What would have to be otherwise for this to be met. */
  readonly needs?: Said;
  /** What must be known to tell. */
  readonly missing?: readonly Missing[];
}

/** A rule of the chain: one file, one line in `rules.ts`. */
export interface Rule {
  readonly id: string;
  readonly title: string;
  /** What it asks and why, in plain words. */
  readonly prose: string;
  readonly remedy: readonly string[];
  readonly sources: readonly Clause[];
  judge(subject: Case): readonly Judgement[];
}

export function rule(definition: Rule): Rule {
  return definition;
}

/** Beyond this a margin says no more than 'plenty', or 'hopeless'. */
export const largestMargin = 60;

/** A margin in decibels from a ratio, allowed over found; a ratio of zero or less is as far outside as can be told. */
export function marginOf(ratio: number): number {
  if (!(ratio > 0)) return -largestMargin;
  return Math.max(-largestMargin, Math.min(largestMargin, 20 * Math.log10(ratio)));
}

/** What is needed where nothing but an answer is. */
export function toKnow(missing: readonly Missing[]): string {
  return `to know ${theMissing(missing)}`;
}

/** Judges when the answer is known, and says what is missing when it is not. */
export function judged<T>(
  known: Answer<T>,
  about: { readonly rule: string; readonly what: Said; readonly target?: Target; readonly limit?: Measure },
  judge: (value: T) => readonly Judgement[],
): readonly Judgement[] {
  if (known.known) return judge(known.value);
  return [
    {
      rule: about.rule,
      ...(about.target === undefined ? {} : { target: about.target.name }),
      outcome: 'cannot tell',
      what: about.what,
      found: { is: 'words', words: 'unknown' },
      limit: about.limit ?? { is: 'words', words: 'to be told' },
      missing: known.missing,
      needs: toKnow(known.missing),
    },
  ];
}

/** The reason in one sentence, from the values themselves. */
export function reasoned(judgement: Judgement): Measure {
  const subject = judgement.target === undefined ? '' : `${judgement.target}: `;
  const at = judgement.frequency === undefined ? '' : said` at ${measured('frequency', judgement.frequency)}`;
  const limit = showMeasure(judgement.limit) === '' ? '' : said` (limit ${judgement.limit})`;
  return said`${subject}${judgement.what} ${judgement.found}${at}${limit}`;
}

/** The reason as text, in the units of who reads it. */
export function reason(judgement: Judgement, showing: Showing = {}): string {
  return showMeasure(reasoned(judgement), showing);
}
