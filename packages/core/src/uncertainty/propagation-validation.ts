import type { Budget } from './budget.ts';
import type { Trials, TrialsInterval } from './trials-summary.ts';

/** Whether the law of propagation agrees with the trials. */
export interface PropagationValidation {
  /** Half a unit of the last significant digit of the standard uncertainty that is asked for, δ. */
  readonly tolerance: number;
  /** How far the ends of the two coverage intervals lie apart. */
  readonly low: number;
  readonly high: number;
  /** Both ends within δ as found. */
  readonly within: boolean;
  /** Whether that is sure: `cannot tell` where the scatter of the trials themselves could have decided it. */
  readonly verdict: 'agrees' | 'differs' | 'cannot tell';
}

/**
 * Numerical tolerance of a standard uncertainty u at n significant digits: with u = c·10^l, c a whole number of n
 * digits, δ = 10^l/2. Source: JCGM 101, 7.9.2 (from memory). Zero for u = 0.
 */
export function numericalTolerance(standardUncertainty: number, digits: number): number {
  if (standardUncertainty === 0) return 0;
  const power = Number(standardUncertainty.toExponential(digits - 1).split('e')[1]);
  return 0.5 * 10 ** (power - digits + 1);
}

/**
 * Compares the coverage interval of the law of propagation with the one by trials, at the same level of confidence:
 * both ends must agree within δ of the trials' standard deviation. Source: JCGM 101, clause 8 (from memory).
 */
export function propagationValidation(
  propagated: Budget,
  drawn: Trials,
  options: { readonly digits: 1 | 2; readonly interval?: 'shortest' | 'symmetric' },
): PropagationValidation {
  const interval: TrialsInterval = drawn[options.interval ?? 'shortest'];
  const tolerance = numericalTolerance(drawn.standardDeviation, options.digits);
  const low = Math.abs(propagated.interval.low - interval.low);
  const high = Math.abs(propagated.interval.high - interval.high);
  const { standardErrors } = interval;
  const surely = low + 2 * standardErrors.low <= tolerance && high + 2 * standardErrors.high <= tolerance;
  const surelyNot = low - 3 * standardErrors.low > tolerance || high - 3 * standardErrors.high > tolerance;
  const verdict = surely ? 'agrees' : surelyNot ? 'differs' : 'cannot tell';
  return { tolerance, low, high, within: low <= tolerance && high <= tolerance, verdict };
}
