/** The longest stretch in which a channel stands still: how many samples, at which value, from which sample. */
export interface Standstill {
  readonly samples: number;
  readonly value: number;
  readonly from: number;
}

/** Watches for stretches in which nothing changes. */
export class StillWatch {
  longest: Standstill = { samples: 0, value: Number.NaN, from: 0 };
  #count = 0;
  #changes = 0;
  #value = Number.NaN;
  #from = 0;

  see(value: number): void {
    if (value !== this.#value) {
      this.#end();
      this.#changes += 1;
      this.#value = value;
      this.#from = this.#count;
    }
    this.#count += 1;
  }

  /** To be called at the end of the record. */
  done(): void {
    this.#end();
  }

  get never(): boolean {
    return this.#count > 0 && this.#changes === 1;
  }

  /** Samples between two changes outside the longest standstill. */
  get usual(): number {
    return (this.#count - this.longest.samples) / Math.max(1, this.#changes - 1);
  }

  #end(): void {
    const samples = this.#count - this.#from;
    if (samples > this.longest.samples) this.longest = { samples, value: this.#value, from: this.#from };
  }
}
