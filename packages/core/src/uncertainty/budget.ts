import { Refusal } from '../quantity/index.ts';
import type { Contribution } from './contribution.ts';
import { type Correlation, type CorrelationMatrix, correlatedGroups, correlationMatrix } from './correlation.ts';
import { coverageFactor, probabilityOutside, requireLevel, wholeDegreesOfFreedom } from './coverage.ts';
import type { DegreesOfFreedom } from './distribution/distribution.ts';
import { type Uncertain, uncertain } from './uncertain.ts';

/** How wide an expanded uncertainty is to be: a level of confidence, or an agreed factor such as k = 2. */
export type WantedCoverage = { readonly level: number } | { readonly factor: number };

/** One line of a budget. */
export interface BudgetLine {
  readonly contribution: Contribution;
  /** Slope of the result to this input, c. */
  readonly sensitivity: number;
  /** |c|·u: what this input alone would give. */
  readonly uncertainty: number;
  /** Its part of the combined variance; with correlation it can be negative. All parts sum to 1. */
  readonly share: number;
  /** Which way it moves the result. */
  readonly direction: Contribution['direction'];
}

export interface Budget {
  readonly estimate: number;
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: DegreesOfFreedom;
  /** The factor used, and the level of confidence it stands for at these degrees of freedom. */
  readonly coverage: { readonly factor: number; readonly level: number };
  /** From all terms, either way. */
  readonly expandedUncertainty: number;
  /** Expanded uncertainty above and below: less than the former where a term moves the result one way only. */
  readonly upward: number;
  readonly downward: number;
  /** Estimate less the expanded uncertainty, to estimate plus it. */
  readonly interval: { readonly low: number; readonly high: number };
  /** Largest first. */
  readonly lines: readonly BudgetLine[];
}

export interface BudgetOptions {
  readonly coverage: WantedCoverage;
  readonly correlations?: readonly Correlation[];
}

/**
 * The budget of an uncertain quantity. u_c² = Σ_i Σ_j c_i·c_j·u_i·u_j·r_ij; ν_eff = u_c⁴/Σ((c_i·u_i)⁴/ν_i)
 * (Welch-Satterthwaite); k = t_p(⌊ν_eff⌋); U = k·u_c. Correlated inputs count as one group with the fewest degrees of
 * freedom among them, which is exact for readings taken at the same moments; the formula itself is for independent
 * inputs only. Source: JCGM 100, 5.1.2, 5.2.2, G.4.1, G.6.4. Throws Refusal for impossible correlations.
 */
export function budget(quantity: Uncertain, options: BudgetOptions): Budget {
  const inputs = [...quantity.sensitivities.keys()];
  const signed = inputs.map((input) => quantity.sensitivities.get(input)! * input.standardUncertainty);
  const correlations = options.correlations ?? [];
  const matrix = correlationMatrix(inputs, correlations);
  const standardUncertainty = combinedUncertainty(signed, matrix);
  requireInRange(quantity, standardUncertainty);
  const degreesOfFreedom = effectiveDegreesOfFreedom(inputs, signed, matrix, correlations, standardUncertainty);
  const coverage = coverageOf(options.coverage, degreesOfFreedom);
  const lines = inputs.map((input, i) => {
    const sensitivity = quantity.sensitivities.get(input)!;
    const share = shareOf(i, signed, matrix, standardUncertainty);
    const direction = directionOf(input, sensitivity);
    return { contribution: input, sensitivity, uncertainty: Math.abs(signed[i]!), share, direction };
  });
  const oneWay = (against: Contribution['direction']) => {
    const kept = signed.map((each, i) => (lines[i]!.direction === against ? 0 : each));
    return coverage.factor * combinedUncertainty(kept, matrix);
  };
  const expandedUncertainty = coverage.factor * standardUncertainty;
  const interval = {
    low: quantity.estimate - expandedUncertainty,
    high: quantity.estimate + expandedUncertainty,
  };
  requireInRange(quantity, interval.low, interval.high);
  return {
    estimate: quantity.estimate,
    standardUncertainty,
    degreesOfFreedom,
    coverage,
    expandedUncertainty,
    upward: oneWay('downward'),
    downward: oneWay('upward'),
    interval,
    lines: lines.sort((a, b) => b.uncertainty - a.uncertainty),
  };
}

/**
 * The budget of independent terms that simply add, such as relative terms of a product: u = √(Σ u_i²), U = k·u.
 * Source: JCGM 100, 5.1.6.
 */
export function combined(contributions: readonly Contribution[], options: BudgetOptions): Budget {
  const terms = contributions.map(uncertain);
  const estimate = terms.reduce((sum, each) => sum + each.estimate, 0);
  const sensitivities = new Map<Contribution, number>();
  for (const each of contributions) sensitivities.set(each, (sensitivities.get(each) ?? 0) + 1);
  return budget({ estimate, sensitivities }, options);
}

/** Covariance of two results through the inputs they share and those that are correlated. Source: JCGM 100, H.2.3. */
export function covariance(a: Uncertain, b: Uncertain, correlations: readonly Correlation[] = []): number {
  const inputs = [...new Set([...a.sensitivities.keys(), ...b.sensitivities.keys()])];
  const matrix = correlationMatrix(inputs, correlations);
  const scaledOf = (x: Uncertain) => inputs.map((each) => (x.sensitivities.get(each) ?? 0) * each.standardUncertainty);
  const [ofA, ofB] = [scaledOf(a), scaledOf(b)];
  return matrix.reduce((sum, row, i) => sum + row.reduce((part, r, j) => part + ofA[i]! * r * ofB[j]!, 0), 0);
}

/** Correlation coefficient of two results, u(a, b)/(u(a) · u(b)); undefined where one of them has no uncertainty. */
export function correlationCoefficient(
  a: Uncertain,
  b: Uncertain,
  correlations: readonly Correlation[] = [],
): number | undefined {
  const together = Math.sqrt(covariance(a, a, correlations) * covariance(b, b, correlations));
  return together > 0 ? Math.max(-1, Math.min(1, covariance(a, b, correlations) / together)) : undefined;
}

/** √(Σ Σ s_i·s_j·r_ij), taken relative to the largest term so that very small and very large terms keep their digits. */
function combinedUncertainty(signed: readonly number[], matrix: CorrelationMatrix): number {
  const largest = signed.reduce((most, each) => Math.max(most, Math.abs(each)), 0);
  if (largest === 0) return 0;
  let variance = 0;
  for (const [i, row] of matrix.entries()) {
    for (const [j, r] of row.entries()) if (r !== 0) variance += (signed[i]! / largest) * r * (signed[j]! / largest);
  }
  // Terms that cancel by full correlation leave a rest of rounding only.
  return variance < 1e-14 * signed.length ? 0 : largest * Math.sqrt(variance);
}

function requireInRange(quantity: Uncertain, ...numbers: readonly number[]): void {
  if (numbers.every(Number.isFinite)) return;
  throw new Refusal({
    read: `an estimate of ${quantity.estimate} with an uncertainty beyond all numbers`,
    expected: 'a budget within the range of numbers; check the powers of ten of its inputs',
  });
}

function shareOf(i: number, signed: readonly number[], matrix: CorrelationMatrix, whole: number): number {
  if (whole === 0) return 0;
  return matrix[i]!.reduce((sum, r, j) => sum + (signed[i]! / whole) * r * (signed[j]! / whole), 0);
}

function effectiveDegreesOfFreedom(
  inputs: readonly Contribution[],
  signed: readonly number[],
  matrix: CorrelationMatrix,
  correlations: readonly Correlation[],
  whole: number,
): DegreesOfFreedom {
  if (whole === 0) return 'infinite';
  let sum = 0;
  for (const group of correlatedGroups(inputs, correlations)) {
    const fewest = group.reduce((least, i) => {
      const own = inputs[i]!.degreesOfFreedom;
      return own === 'infinite' || signed[i] === 0 ? least : Math.min(least, own);
    }, Number.POSITIVE_INFINITY);
    const among = group.map((i) => group.map((j) => matrix[i]![j]!));
    sum += (combinedUncertainty(pick(signed, group), among) / whole) ** 4 / fewest;
  }
  return sum > 0 ? 1 / sum : 'infinite';
}

function pick(values: readonly number[], places: readonly number[]): readonly number[] {
  return places.map((place) => values[place]!);
}

function coverageOf(wanted: WantedCoverage, degreesOfFreedom: DegreesOfFreedom): Budget['coverage'] {
  const whole = wholeDegreesOfFreedom(degreesOfFreedom);
  if ('level' in wanted) {
    requireLevel(wanted.level);
    return { level: wanted.level, factor: coverageFactor(wanted.level, whole) };
  }
  if (!(wanted.factor > 0 && Number.isFinite(wanted.factor))) {
    throw new Refusal({ read: String(wanted.factor), expected: 'a coverage factor above zero, such as 2' });
  }
  return { factor: wanted.factor, level: 1 - probabilityOutside(wanted.factor, whole) };
}

const opposite = { both: 'both', upward: 'downward', downward: 'upward' } as const;

function directionOf(input: Contribution, sensitivity: number): Contribution['direction'] {
  return sensitivity < 0 ? opposite[input.direction] : input.direction;
}
