import { screeningRules } from '../source/index.ts';
import { type Clause, clause } from '../source/source.ts';

/** How much margin this plant asks for. Stated in the plant file; where it is silent, the practice shown here. */
export interface Policy {
  /** Least ratio of the smallest level to the noise, in decibels, to detect. */
  readonly detection: number;
  /** Least distance of the worst peak from the ceiling, in decibels, before a warning. */
  readonly headroom: number;
  /** Least remaining part of the tolerance, as a fraction of the reading, before a warning. */
  readonly response: number;
  readonly sources: readonly Clause[];
}

export const usualPolicy: Policy = {
  detection: 10,
  headroom: 3,
  response: 0.02,
  sources: [clause(screeningRules, 'rules 4 and 5')],
};
