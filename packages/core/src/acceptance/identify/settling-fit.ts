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
 * Slow noise keeps its sign from point to point, so the variance is taken times (1 + r)/(1 − r) with the correlation r of
 * neighbours that the residuals show (first-order autoregression). Undefined where the fit does not come to rest.
 */
export function settlingFit(points: Float64Array, step: number, guess: number): Settling | undefined {
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
  const r = Math.min(0.95, Math.max(0, best.correlation));
  return {
    rate: alpha,
    error: best.error * Math.sqrt((1 + r) / (1 - r)),
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
  let [squares, products, before] = [0, 0, 0];
  for (let n = 0; n < points.length; n++) {
    const residual = points[n]! - rest - height * Math.exp(-alpha * n * step);
    squares += residual * residual;
    if (n > 0) products += residual * before;
    before = residual;
  }
  return {
    move: all.values[2]!,
    error: Math.sqrt(Math.max(0, all.covariance[2]![2]!)),
    left: Math.sqrt(squares / points.length),
    correlation: squares > 0 ? products / squares : 0,
    height,
  };
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
  return leastSquares(normal, right, squares, points.length);
}
