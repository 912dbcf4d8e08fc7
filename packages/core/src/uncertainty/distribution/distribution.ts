import type { Clause } from '../../source/source.ts';
import type { Random } from '../random.ts';

/** How well a standard uncertainty is itself known; `infinite` where it is taken as exact. */
export type DegreesOfFreedom = number | 'infinite';

/** How one input scatters about its estimate. */
export interface Spread {
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: DegreesOfFreedom;
  /** Half-width by which the ends themselves are uncertain; zero for most. */
  readonly inexactness: number;
}

/** The ways in which a width is written on a certificate, a data sheet or in a budget. */
export const statedWidths = ['standard-uncertainty', 'expanded', 'half-width', 'resolution'] as const;
export type StatedWidth = (typeof statedWidths)[number];

/** A shape of scatter: how its stated width becomes a standard uncertainty, and how it is drawn in trials. */
export interface Distribution<Kind extends string = string> {
  readonly kind: Kind;
  readonly title: string;
  readonly alsoCalled?: readonly string[];
  readonly statedBy: readonly StatedWidth[];
  /** Half-width (or step of resolution) over standard uncertainty, where the shape has ends. */
  readonly divisor?: number;
  /** Whether its ends have an inexactness of their own. */
  readonly inexactEnds?: true;
  /** Whether it is drawn with its degrees of freedom, and so needs them. */
  readonly needsDegreesOfFreedom?: true;
  /** Standard deviation of the drawn numbers, where it exists. */
  standardDeviation(spread: Spread): number | undefined;
  /** Deviations from the estimate, one a call. */
  deviations(spread: Spread, random: Random): () => number;
  /**
   * Present where several inputs can be drawn jointly from correlated normal numbers: a factor common to all of them
   * at each trial.
   */
  commonFactor?(degreesOfFreedom: DegreesOfFreedom, random: Random): () => number;
  readonly sources: readonly Clause[];
}

/** A shape of scatter as it stands in the list. */
export function distribution<const Kind extends string>(definition: Distribution<Kind>): Distribution<Kind> {
  return definition;
}
