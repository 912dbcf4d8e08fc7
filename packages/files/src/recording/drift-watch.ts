/** Stretches kept; neighbours are joined in pairs when all are filled, so that any length fits. */
const most = 64;

/** A channel that comes down from where it was: where it began, where it ended, and how fast. */
export interface Drift {
  readonly from: number;
  readonly to: number;
  /** Samples in which the rest of the way falls to 1/e, of an exponential through beginning, middle and end. */
  readonly constant: number;
  /** Share of the variance of the whole record that is in this slow way. */
  readonly share: number;
}

/** Watches the means of equal stretches go by. Holds 64 of them. */
export class DriftWatch {
  #stretch = 64;
  #filled = 0;
  readonly #sums = new Float64Array(most);
  readonly #squares = new Float64Array(most);
  readonly #counts = new Float64Array(most);
  #inStretch = 0;

  see(value: number): void {
    if (this.#inStretch === this.#stretch) this.#next();
    this.#inStretch += 1;
    if (!Number.isFinite(value)) return;
    this.#sums[this.#filled]! += value;
    this.#squares[this.#filled]! += value * value;
    this.#counts[this.#filled]! += 1;
  }

  /**
   * The drift, where the slow way holds four fifths of the variance, goes one way in nineteen of twenty steps, and makes
   * most of its way at first, as what settles does; a ramp or a wave does not.
   */
  drift(): Drift | undefined {
    const length = this.#filled;
    if (length < 16) return undefined;
    const means = Array.from({ length }, (_, at) => this.#sums[at]! / this.#counts[at]!);
    if (means.some((each) => !Number.isFinite(each))) return undefined;
    const mean = means.reduce((sum, each) => sum + each, 0) / length;
    const slow = means.reduce((sum, each) => sum + (each - mean) ** 2, 0) / length;
    const within =
      means.reduce((sum, each, at) => sum + this.#squares[at]! / this.#counts[at]! - each * each, 0) / length;
    const share = slow / (slow + Math.max(0, within));
    const half = (length - 1) >> 1;
    const [from, middle, to] = [means[0]!, means[half]!, means[2 * half]!];
    const way = Math.sign(to - from);
    const steps = means.slice(1).map((each, at) => Math.sign(each - means[at]!));
    const same = steps.filter((each) => each === way).length;
    const [first, second] = [middle - from, to - middle];
    if (!(share > 0.8) || same < 0.95 * steps.length || !(first * way > 1.5 * second * way) || second * way <= 0) {
      return undefined;
    }
    return { from, to, constant: (half * this.#stretch) / Math.log(first / second), share };
  }

  #next(): void {
    this.#filled += 1;
    this.#inStretch = 0;
    if (this.#filled < most) return;
    const half = most / 2;
    for (const each of [this.#sums, this.#squares, this.#counts]) {
      for (let at = 0; at < half; at++) each[at] = each[2 * at]! + each[2 * at + 1]!;
      each.fill(0, half);
    }
    this.#filled = half;
    this.#stretch *= 2;
  }
}
