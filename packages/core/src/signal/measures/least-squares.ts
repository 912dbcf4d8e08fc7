/** The solution of a linear least-squares problem. */
export interface LeastSquares {
  readonly values: readonly number[];
  /** Of the values, for residuals that are white. */
  readonly covariance: readonly (readonly number[])[];
  /** rms of the residuals: √(Σr²/N). */
  readonly residual: number;
}

/**
 * Least squares from its normal equations: θ = M⁻¹·b, covariance s²·M⁻¹ with s² = Σr²/(N − p), Σr² = Σx² − θ·b.
 * Undefined where the equations say the same thing twice. `squares` is Σx², `count` N.
 */
export function leastSquares(
  normal: readonly (readonly number[])[],
  right: readonly number[],
  squares: number,
  count: number,
): LeastSquares | undefined {
  const inverse = inverseOf(normal);
  if (inverse === undefined || count <= right.length) return undefined;
  const values = inverse.map((row) => row.reduce((sum, each, k) => sum + each * right[k]!, 0));
  const explained = values.reduce((sum, each, k) => sum + each * right[k]!, 0);
  const left = Math.max(0, squares - explained);
  const variance = left / (count - right.length);
  return {
    values,
    covariance: inverse.map((row) => row.map((each) => each * variance)),
    residual: Math.sqrt(left / count),
  };
}

/** The inverse of a small symmetric matrix of plain numbers, M·M⁻¹ = 1; undefined where it has none. */
export function inverseOf(matrix: readonly (readonly number[])[]): readonly (readonly number[])[] | undefined {
  const size = matrix.length;
  // Scaled to ones on the diagonal first, so that units do not decide what counts as singular.
  const scale = matrix.map((row, k) => 1 / Math.sqrt(row[k]!));
  if (!scale.every((each) => Number.isFinite(each))) return undefined;
  const rows = matrix.map((row, i) => [
    ...row.map((each, j) => each * scale[i]! * scale[j]!),
    ...Array.from({ length: size }, (_, j) => (i === j ? 1 : 0)),
  ]);
  for (let k = 0; k < size; k++) {
    let pivot = k;
    for (let i = k + 1; i < size; i++) if (Math.abs(rows[i]![k]!) > Math.abs(rows[pivot]![k]!)) pivot = i;
    [rows[k], rows[pivot]] = [rows[pivot]!, rows[k]!];
    const top = rows[k]!;
    if (!(Math.abs(top[k]!) > 1e-12)) return undefined;
    const factor = 1 / top[k]!;
    for (let j = k; j < 2 * size; j++) top[j]! *= factor;
    for (let i = 0; i < size; i++) {
      if (i === k) continue;
      const share = rows[i]![k]!;
      for (let j = k; j < 2 * size; j++) rows[i]![j]! -= share * top[j]!;
    }
  }
  return rows.map((row, i) => row.slice(size).map((each, j) => each * scale[i]! * scale[j]!));
}
