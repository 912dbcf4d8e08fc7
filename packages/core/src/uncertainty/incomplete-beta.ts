import { Broken } from '../quantity/index.ts';

/** ln Γ(x) for x > 0, by Lanczos's series with g = 7 and nine terms; relative error below 1e-14. */
export function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const z = x - 1;
  let sum = lanczos[0]!;
  for (let i = 1; i < lanczos.length; i++) sum += lanczos[i]! / (z + i);
  const t = z + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}

const lanczos = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
] as const;

/** The regularised incomplete beta function I_x(a, b), 0 ≤ x ≤ 1, by its continued fraction (Lentz's method). */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return x < (a + 1) / (a + b + 2) ? (front * fraction(x, a, b)) / a : 1 - (front * fraction(1 - x, b, a)) / b;
}

function fraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let result = d;
  for (let m = 1; m <= 100_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    result *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    result *= d * c;
    if (Math.abs(d * c - 1) < 1e-15) return result;
  }
  throw new Broken('the continued fraction of the incomplete beta function converges', { x, a, b });
}

function away(value: number): number {
  return Math.abs(value) < 1e-300 ? 1e-300 : value;
}

/** erfc(x) for x ≥ 0: by its series below 2, by its continued fraction above. */
export function complementaryError(x: number): number {
  const square = x * x;
  if (x < 2) {
    let term = x;
    let sum = x;
    for (let n = 1; Math.abs(term) > 1e-17 * Math.abs(sum); n++) {
      term *= (2 * square) / (2 * n + 1);
      sum += term;
    }
    return 1 - (2 / Math.sqrt(Math.PI)) * Math.exp(-square) * sum;
  }
  let tail = x;
  for (let n = 80; n >= 1; n--) tail = x + n / 2 / tail;
  return Math.exp(-square) / (Math.sqrt(Math.PI) * tail);
}
