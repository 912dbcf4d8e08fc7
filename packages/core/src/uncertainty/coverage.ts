import { Refusal } from '../quantity/index.ts';
import type { DegreesOfFreedom } from './distribution/distribution.ts';
import { complementaryError, incompleteBeta } from './incomplete-beta.ts';

/** Above this many degrees of freedom Student's t is the normal to better than 1e-6 of the coverage factor. */
const asGoodAsInfinite = 1e6;

/**
 * Probability that Student's t of ν degrees of freedom lies outside ±t: I_x(ν/2, 1/2) with x = ν/(ν + t²); for
 * infinite ν the normal erfc(t/√2).
 */
export function probabilityOutside(t: number, degreesOfFreedom: DegreesOfFreedom): number {
  const k = Math.abs(t);
  if (degreesOfFreedom === 'infinite' || degreesOfFreedom > asGoodAsInfinite) return complementaryError(k / Math.SQRT2);
  return incompleteBeta(degreesOfFreedom / (degreesOfFreedom + k * k), degreesOfFreedom / 2, 0.5);
}

/**
 * Coverage factor k of a level of confidence p: the t for which Student's t of ν degrees of freedom lies within ±t
 * with probability p. ν need not be whole. Source: JCGM 100, G.3 and table G.2.
 */
export function coverageFactor(level: number, degreesOfFreedom: DegreesOfFreedom): number {
  requireLevel(level);
  requireDegreesOfFreedom(degreesOfFreedom);
  const outside = 1 - level;
  let low = 0;
  let high = 1;
  while (probabilityOutside(high, degreesOfFreedom) > outside) high *= 2;
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (probabilityOutside(middle, degreesOfFreedom) > outside) low = middle;
    else high = middle;
  }
}

/**
 * Degrees of freedom that a relative uncertainty of the standard uncertainty itself amounts to: ν = 1/(2·r²).
 * 25 % gives 8, 10 % gives 50. Source: JCGM 100, G.4.2.
 */
export function degreesOfFreedomFromReliability(reliability: number): DegreesOfFreedom {
  if (!(reliability >= 0 && reliability <= 0.7)) {
    throw new Refusal({
      read: String(reliability),
      expected: 'a reliability from 0 (exact) to 0.7: 0.25 where the standard uncertainty is known to 25 %',
    });
  }
  return reliability === 0 ? 'infinite' : 1 / (2 * reliability * reliability);
}

/** The whole number of degrees of freedom that a table is entered with: the next lower. Source: JCGM 100, G.4.1. */
export function wholeDegreesOfFreedom(degreesOfFreedom: DegreesOfFreedom): DegreesOfFreedom {
  return degreesOfFreedom === 'infinite' ? 'infinite' : Math.max(1, Math.floor(degreesOfFreedom * (1 + 1e-9)));
}

/** Refuses a level of confidence that is not a probability above 0 and below 1, such as 95 for 0.95. */
export function requireLevel(level: number): void {
  if (level > 0 && level <= 0.999_999) return;
  throw new Refusal({
    read: String(level),
    expected: 'a level of confidence above 0 and at most 0.999999, such as 0.95',
    ...(level > 1 && level <= 100 ? { suggestion: `For ${level} % write ${level / 100}.` } : {}),
  });
}

/** Refuses a number of degrees of freedom below 1. */
export function requireDegreesOfFreedom(degreesOfFreedom: DegreesOfFreedom): void {
  if (degreesOfFreedom === 'infinite' || (degreesOfFreedom >= 1 && Number.isFinite(degreesOfFreedom))) return;
  throw new Refusal({
    read: String(degreesOfFreedom),
    expected: "degrees of freedom of 1 or more, or 'infinite'",
  });
}
