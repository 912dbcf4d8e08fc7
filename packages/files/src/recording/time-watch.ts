/** Watches a time column go by, in seconds: its rate, its jumps, times that stand twice. Holds no column. */
export class TimeWatch {
  jumps = 0;
  firstJump = 0;
  backwards = 0;
  firstBackwards = 0;
  repeated = 0;
  #count = 0;
  #first = 0;
  #last = 0;
  #usual = 0;
  #largestSlip = 0;

  see(times: Float64Array): void {
    if (this.#count === 0) this.#usual = medianStep(times);
    for (const time of times) {
      if (!Number.isFinite(time)) continue;
      this.#count++;
      if (this.#count === 1) this.#first = time;
      else this.#step(time - this.#last);
      this.#last = time;
    }
  }

  #step(step: number): void {
    if (step < 0) {
      this.backwards++;
      this.firstBackwards ||= this.#count;
    } else if (step === 0) {
      this.repeated++;
    } else if (Math.abs(step - this.#usual) > 0.5 * this.#usual) {
      // Times of few digits step by none or by several of their last digit; that is told as repeats.
      if (this.repeated > 0 && step <= 20 * this.#usual) return;
      this.jumps++;
      this.firstJump ||= this.#count;
    } else {
      this.#largestSlip = Math.max(this.#largestSlip, Math.abs(step - this.#usual));
    }
  }

  /** Whether some step is off the usual one by more than the digits of the times would explain. */
  get uneven(): boolean {
    return this.jumps > 0 || this.backwards > 0 || this.#largestSlip > 0.25 * this.#usual;
  }

  /** Samples a second, in hertz: by the first and last time where all is even, else by the usual step. */
  get rate(): number | undefined {
    if (this.#count < 2) return undefined;
    const span = this.#last - this.#first;
    const even = this.jumps === 0 && this.backwards === 0;
    const rate = even ? (this.#count - 1) / span : 1 / this.#usual;
    return Number.isFinite(rate) && rate > 0 ? rate : undefined;
  }

  /** Relative: what the digits of the times leave open of the rate. */
  get uncertainty(): number {
    const even = this.jumps === 0 && this.backwards === 0;
    const span = even ? this.#last - this.#first : this.#usual;
    const slip = this.repeated > 0 ? this.#usual : this.#largestSlip;
    return span > 0 ? (2 * slip) / span : 1;
  }
}

function medianStep(times: Float64Array): number {
  const steps: number[] = [];
  for (let index = 1; index < times.length && steps.length < 4096; index++) {
    const step = times[index]! - times[index - 1]!;
    if (step > 0) steps.push(step);
  }
  steps.sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? 0;
}
