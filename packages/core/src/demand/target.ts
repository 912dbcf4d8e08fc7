import type { Answer, Band, Level, Missing, Motion, Tolerance } from '../quantity/index.ts';
import type { Clause } from '../source/source.ts';
import type { Observable } from './observables/observable.ts';

/** Whose motion, relative to what. */
export const references = ['casing', 'shaft-relative', 'shaft-absolute', 'two-body', 'any'] as const;
export type Reference = (typeof references)[number];

/** Whether a transducer that senses one motion sees what is asked for. */
export function sees(sensed: Reference, asked: Reference): boolean {
  return asked === 'any' || sensed === asked;
}

/** The targets that ask for the motion a transducer senses: only their peaks reach it. */
export function seenBy(sensed: Reference, targets: readonly Target[]): readonly Target[] {
  return targets.filter((target) => sees(sensed, target.reference));
}

/** Where a target, or an assumption in it, comes from. */
export interface Origin {
  /** `stated` by the engineer, or `proposed` from an element of the machine. */
  readonly by: 'stated' | 'proposed';
  readonly from: string;
  readonly sources: readonly Clause[];
}

/** One thing a measuring point must show: what, where in frequency, how small, how large, how truly. */
export interface Target {
  readonly name: string;
  readonly cause: string;
  readonly observable: Observable;
  readonly motion: Motion;
  readonly reference: Reference;
  /** The frequencies at which the response is judged; a burst is judged over its whole band. */
  readonly frequencies: Answer<readonly number[]>;
  /** The band of an overall value or a burst; of a line, the line itself. */
  readonly band: Answer<Band>;
  /** Where the largest level lies, so that it can be turned into another motion. */
  readonly largestAt: Answer<number>;
  readonly smallest: Answer<Level<Motion>>;
  readonly largest: Answer<Level<Motion>>;
  readonly tolerance: Answer<Tolerance>;
  /** The line spacing at which the line is looked for. */
  readonly resolution: Answer<number>;
  readonly weight: 'essential' | 'desirable';
  /** The target whose largest level already contains this one's motion; its peak is then not added again. */
  readonly within?: string;
  readonly origin: Origin;
}

/** Motion that need not be measured but must not overload the chain: knocks, carrier, structure-borne noise. */
export interface Disturbance {
  readonly name: string;
  readonly level: Answer<Level<Motion>>;
  /** Where its energy lies; an impact without a band is taken at its level, with no resonance gain. */
  readonly band?: Band;
  /** Its band is stated as unknown, which is not the same as none: what must be known to tell how it is lifted. */
  readonly bandMissing?: readonly Missing[];
}
