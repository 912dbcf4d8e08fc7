import type { Clause } from '../../source/source.ts';

/**
 * A window: the weight each sample of a record gets before its spectrum is taken. `weight` is a function of the place
 * in the record, 0 at its beginning and 1 at its end.
 */
export interface WindowKind<Kind extends string = string> {
  readonly kind: Kind;
  readonly name: string;
  /** What it is used for, in a line. */
  readonly use: string;
  readonly weight: (place: number) => number;
  readonly sources: readonly Clause[];
}

/** A window as it stands in the list of kinds. */
export function windowKind<const Kind extends string>(definition: WindowKind<Kind>): WindowKind<Kind> {
  return definition;
}

/**
 * Weights of a sum of cosines: w(x) = a_0 − a_1·cos 2πx + a_2·cos 4πx − …, the signs alternating, as handbooks print
 * the coefficients.
 */
export function cosineSum(...coefficients: readonly number[]): (place: number) => number {
  return (place) => {
    let weight = 0;
    for (let k = coefficients.length - 1; k >= 0; k--) {
      const sign = k % 2 === 0 ? 1 : -1;
      weight += sign * coefficients[k]! * Math.cos(2 * Math.PI * k * place);
    }
    return weight;
  };
}

/** Coefficients divided by their sum, so that the top of the window is one. */
export function toTopOfOne(...coefficients: readonly number[]): readonly number[] {
  const top = coefficients.reduce((total, each) => total + each, 0);
  return coefficients.map((each) => each / top);
}

/** Kaiser-Bessel weights: w(x) = I_0(πα·√(1 − (2x − 1)²)) / I_0(πα). Source: Harris 1978. */
export function kaiserBessel(alpha: number): (place: number) => number {
  const top = besselI0(Math.PI * alpha);
  return (place) => besselI0(Math.PI * alpha * Math.sqrt(Math.max(0, 1 - (2 * place - 1) ** 2))) / top;
}

/** Modified Bessel function of order zero by its power series Σ ((x/2)^k / k!)², which has positive terms only. */
function besselI0(x: number): number {
  const quarter = (x * x) / 4;
  let term = 1;
  let total = 1;
  for (let k = 1; term > total * 1e-17; k++) {
    term *= quarter / (k * k);
    total += term;
  }
  return total;
}

/**
 * `periodic`: sample n stands at n/N, as for a spectrum, where the record repeats. `symmetric`: at n/(N − 1), so that
 * first and last are alike, as for designing filters. The noise bandwidth of the two differs by about N/(N − 1).
 */
export const windowDefinitions = ['periodic', 'symmetric'] as const;
export type WindowDefinition = (typeof windowDefinitions)[number];

/** The weights of a record of `length` samples, w(n/N), with N the length or, symmetric, one less. */
export function windowWeights(window: WindowKind, length: number, definition: WindowDefinition): Float64Array {
  const span = definition === 'periodic' ? length : length - 1;
  return Float64Array.from({ length }, (_, n) => window.weight(n / span));
}
