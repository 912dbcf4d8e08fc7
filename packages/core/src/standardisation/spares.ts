import { Broken } from '../quantity/refusal.ts';

/**
 * Probability that at most s pieces fail where m are expected: P(X ≤ s) = Σ m^i e^−m / i!, i = 0…s, X Poisson.
 * Summed outwards from the most likely count, so that it neither underflows nor cancels. Source: any textbook of
 * probability; checked against scipy.stats.poisson.
 */
export function poissonAtMost(s: number, m: number): number {
  if (m === 0) return 1;
  if (s < 0) return 0;
  const { terms, total } = relativeTerms(m);
  let sum = 0;
  for (let count = 0; count <= Math.min(s, terms.length - 1); count++) sum += terms[count]!;
  return Math.min(1, sum / total);
}

/**
 * The fewest spares s for n pieces in use, each expected to fail a times within a lead time, with P(X ≤ s) ≥ level,
 * X Poisson of mean n·a. Valid for independent failures and spares ordered again as they are used.
 */
export function sparesFor(n: number, a: number, level: number): number {
  const m = n * a;
  if (m === 0) return 0;
  const { terms, total } = relativeTerms(m);
  let sum = 0;
  for (let count = 0; count < terms.length; count++) {
    sum += terms[count]!;
    if (sum >= level * total) return count;
  }
  throw new Broken('the terms of the distribution reach every level below one', { m, level });
}

/**
 * Up to how many pieces in use each number of spares is enough: entry s is the largest n ≤ most whose spares are s.
 * The last entry is `most`. Numbers of spares that no n needs are left out of `spares`.
 */
export function spareSteps(most: number, a: number, level: number): { spares: number[]; upTo: number[] } {
  const spares: number[] = [];
  const upTo: number[] = [];
  let n = 0;
  while (n < most) {
    const s = sparesFor(n + 1, a, level);
    let low = n + 1;
    let high = most;
    // Spares never fall as pieces are added, so the step is found by halving.
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (sparesFor(middle, a, level) <= s) low = middle;
      else high = middle - 1;
    }
    spares.push(s);
    upTo.push(low);
    n = low;
  }
  return { spares, upTo };
}

/** Terms of the distribution divided by the largest, and their sum. What is left out is below 1e-17 of it. */
function relativeTerms(m: number): { terms: Float64Array; total: number } {
  const mode = Math.floor(m);
  const last = Math.ceil(m + 12 * Math.sqrt(m) + 40);
  const terms = new Float64Array(last + 1);
  terms[mode] = 1;
  for (let count = mode; count > 0; count--) terms[count - 1] = (terms[count]! * count) / m;
  for (let count = mode; count < last; count++) terms[count + 1] = (terms[count]! * m) / (count + 1);
  let total = 0;
  for (const term of terms) total += term;
  return { terms, total };
}
