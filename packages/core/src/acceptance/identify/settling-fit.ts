import { leastSquares } from '../../signal/measures/least-squares.ts';

/** A course x = C + B·e^(−αt) that was fitted, α in 1/s with its standard error. */
export interface Settling {
  readonly rate: number;
  readonly error: number;
  readonly points: number;
  /** What the fit leaves, over the height of the settling, rms. */
  readonly left: number;
}

/**
 * x = C + B·e^(−αt) by least squares in all three (Gauss-Newton with shrinking steps) over points `step` seconds apart.
 * Slow noise keeps its sign from point to point: where its density S(f) in V²/Hz is told, the variance of α is ∫S·|W|²·df
 * with the spectrum W of the weights by which α hangs on the points; where it is not, or less than what the residuals show
 * for white noise, that. Undefined where the fit does not come to rest.
 */
export function settlingFit(
  points: Float64Array,
  step: number,
  guess: number,
  density?: (frequency: number) => number,
): Settling | undefined {
  let alpha = guess;
  let best = solved(points, step, alpha);
  for (let pass = 0; pass < 60; pass++) {
    if (best === undefined) return undefined;
    const move = best.move;
    let [share, moved] = [1, false];
    while (share > 1e-6) {
      const next = alpha + share * move;
      const tried = next > 0 ? solved(points, step, next) : undefined;
      if (tried !== undefined && tried.left <= best.left) {
        alpha = next;
        best = tried;
        moved = true;
        break;
      }
      share /= 2;
    }
    if (!moved || Math.abs(share * move) < 1e-9 * alpha) break;
  }
  if (best === undefined) return undefined;
  const slow = density === undefined ? 0 : errorOf(best.weights, step, density);
  return {
    rate: alpha,
    error: Math.hypot(best.error, slow),
    points: points.length,
    left: best.left / Math.abs(best.height),
  };
}

function solved(points: Float64Array, step: number, alpha: number) {
  const linear = fitted(points, (n) => [1, Math.exp(-alpha * n * step)]);
  if (linear === undefined) return undefined;
  const [rest, height] = linear.values as [number, number];
  // The derivative by α at the fitted height tells the step and its error.
  const all = fitted(points, (n) => [1, Math.exp(-alpha * n * step), -n * step * height * Math.exp(-alpha * n * step)]);
  if (all === undefined) return undefined;
  let squares = 0;
  for (let n = 0; n < points.length; n++) {
    squares += (points[n]! - rest - height * Math.exp(-alpha * n * step)) ** 2;
  }
  const [one, other, own] = all.covariance[2]!.map((each) => each / all.variance) as [number, number, number];
  return {
    move: all.values[2]!,
    error: Math.sqrt(Math.max(0, all.covariance[2]![2]!)),
    left: Math.sqrt(squares / points.length),
    height,
    weights: points.map((_, n) => {
      const fade = Math.exp(-alpha * n * step);
      return one + (other - own * n * step * height) * fade;
    }),
  };
}

/** √∫S·|W|²·df over the lines of the record, a quarter of a line apart where the weights still change. */
function errorOf(weights: Float64Array, step: number, density: (frequency: number) => number): number {
  const line = 1 / (weights.length * step);
  let variance = 0;
  // Evenly in ln f, from an eighth of a line, below which nothing tells noise from rest, to half the rate of the points.
  const [from, ratio] = [line / 8, 1.08];
  for (let f = from; f < 0.5 / step; f *= ratio) {
    let [re, im] = [0, 0];
    const [c, s] = [Math.cos(2 * Math.PI * f * step), Math.sin(2 * Math.PI * f * step)];
    let [x, y] = [1, 0];
    for (const weight of weights) {
      re += weight * x;
      im += weight * y;
      [x, y] = [x * c - y * s, x * s + y * c];
    }
    variance += density(f) * (re * re + im * im) * f * (ratio - 1);
  }
  return Math.sqrt(variance);
}

function fitted(points: Float64Array, basisAt: (n: number) => readonly number[]) {
  const size = basisAt(0).length;
  const normal = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const right = new Array<number>(size).fill(0);
  let squares = 0;
  for (let n = 0; n < points.length; n++) {
    const basis = basisAt(n);
    const x = points[n]!;
    squares += x * x;
    for (let i = 0; i < size; i++) {
      right[i]! += basis[i]! * x;
      for (let j = 0; j < size; j++) normal[i]![j]! += basis[i]! * basis[j]!;
    }
  }
  const fit = leastSquares(normal, right, squares, points.length);
  return fit === undefined
    ? undefined
    : { ...fit, variance: (fit.residual ** 2 * points.length) / (points.length - size) };
}
