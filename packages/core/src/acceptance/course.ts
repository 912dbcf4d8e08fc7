/** How a channel went along its record: mean, least and greatest of equal stretches, the same count for any length. */
export interface Course {
  /** Samples in one stretch; the last may hold fewer. */
  readonly stretch: number;
  readonly means: Float64Array;
  readonly least: Float64Array;
  readonly greatest: Float64Array;
}

/** Stretches kept at most; a record of any length ends with between half of them and all. */
const mostStretches = 4096;

/**
 * Follows a record of unknown length in bounded memory: when all stretches are filled, neighbours are joined in pairs
 * and each new one holds twice as many samples. Values that are not finite are left out of their stretch.
 */
export class CourseGathering {
  #stretch = 1;
  #filled = 0;
  readonly #sums = new Float64Array(mostStretches);
  readonly #counts = new Float64Array(mostStretches);
  readonly #least = new Float64Array(mostStretches).fill(Number.POSITIVE_INFINITY);
  readonly #greatest = new Float64Array(mostStretches).fill(Number.NEGATIVE_INFINITY);
  #inStretch = 0;

  take(samples: Float64Array): void {
    for (const sample of samples) {
      if (this.#inStretch === this.#stretch) this.#next();
      const at = this.#filled;
      this.#inStretch += 1;
      if (!Number.isFinite(sample)) continue;
      this.#sums[at]! += sample;
      this.#counts[at]! += 1;
      if (sample < this.#least[at]!) this.#least[at] = sample;
      if (sample > this.#greatest[at]!) this.#greatest[at] = sample;
    }
  }

  result(): Course {
    const length = this.#inStretch === 0 ? this.#filled : this.#filled + 1;
    return {
      stretch: this.#stretch,
      means: Float64Array.from({ length }, (_, at) => this.#sums[at]! / this.#counts[at]!),
      least: this.#least.slice(0, length),
      greatest: this.#greatest.slice(0, length),
    };
  }

  #next(): void {
    this.#filled += 1;
    this.#inStretch = 0;
    if (this.#filled < mostStretches) return;
    const half = mostStretches / 2;
    for (let at = 0; at < half; at++) {
      const [one, other] = [2 * at, 2 * at + 1];
      this.#sums[at] = this.#sums[one]! + this.#sums[other]!;
      this.#counts[at] = this.#counts[one]! + this.#counts[other]!;
      this.#least[at] = Math.min(this.#least[one]!, this.#least[other]!);
      this.#greatest[at] = Math.max(this.#greatest[one]!, this.#greatest[other]!);
    }
    this.#sums.fill(0, half);
    this.#counts.fill(0, half);
    this.#least.fill(Number.POSITIVE_INFINITY, half);
    this.#greatest.fill(Number.NEGATIVE_INFINITY, half);
    this.#filled = half;
    this.#stretch *= 2;
  }
}
