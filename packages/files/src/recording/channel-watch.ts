import { bytesExchanged } from './byte-order.ts';
import { DriftWatch } from './drift-watch.ts';
import type { Block } from './open-recording.ts';
import { type Steps, stepsOf } from './steps.ts';
import { StillWatch } from './still-watch.ts';

/** What the values of one channel are like, in its own unit. */
export interface ChannelSurvey {
  readonly samples: number;
  readonly notNumbers: number;
  /** Of the finite values; absent where there are none. */
  readonly range?: { readonly low: number; readonly high: number; readonly mean: number };
  /** Smallest step between neighbouring levels among the first values, where there is one. */
  readonly step?: number;
}

/** Watches the values of one channel go by. Holds none of them but the first. */
export class ChannelWatch {
  steps: Steps | undefined;
  /** The first values have the two bytes of each exchanged. */
  exchanged = false;
  readonly still = new StillWatch();
  readonly drifting = new DriftWatch();
  /** Values at either end of what shares of full scale can be. */
  atFullScale = 0;
  #count = 0;
  #lastFinite = 0;
  #finite = 0;
  #low = Number.POSITIVE_INFINITY;
  #high = Number.NEGATIVE_INFINITY;
  #mean = 0;

  see(block: Block, index: number): void {
    const values = block.values[index]!;
    const imaginary = block.imaginary?.[index];
    if (this.steps === undefined && values.length > 0) {
      const first = values.subarray(0, 8192);
      this.steps = stepsOf(first);
      this.exchanged = this.steps.shareOfFullScale === 15 && bytesExchanged(first);
    }
    const bits = this.steps?.shareOfFullScale;
    const end = bits === undefined ? Number.POSITIVE_INFINITY : 1 - 2 ** -bits;
    for (let at = 0; at < values.length; at++) {
      const value = values[at]!;
      this.#count++;
      this.still.see(value);
      this.drifting.see(value);
      if (value >= end || value <= -end) this.atFullScale++;
      if (!Number.isFinite(value) || (imaginary !== undefined && !Number.isFinite(imaginary[at]))) continue;
      this.#finite++;
      this.#lastFinite = this.#count;
      if (value < this.#low) this.#low = value;
      if (value > this.#high) this.#high = value;
      this.#mean += (value - this.#mean) / this.#finite;
    }
  }

  survey(endsWhereEmpty: boolean): ChannelSurvey {
    this.still.done();
    const samples = endsWhereEmpty && this.#finite > 0 ? this.#lastFinite : this.#count;
    const step = this.steps?.smallest;
    return {
      samples,
      notNumbers: samples - this.#finite,
      ...(this.#finite === 0 ? {} : { range: { low: this.#low, high: this.#high, mean: this.#mean } }),
      ...(step === undefined ? {} : { step }),
    };
  }
}
