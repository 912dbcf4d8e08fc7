import type { Complex } from '../signal/complex.ts';
import { complexFourierTransform, type Lines, realFourierTransform } from '../signal/fft.ts';

/** Samples a rehearsal may hold at most: what a transform of twice as many takes still fits the memory of a laptop. */
export const mostSamples = 2 ** 23;

export function nextPowerOfTwo(length: number): number {
  return 2 ** Math.ceil(Math.log2(Math.max(2, length)));
}

/** The real record of a length, a power of two, that has these lines: the inverse of the transform of a real record. */
export function inverseRealTransform(length: number): (lines: Lines) => Float64Array {
  const half = length >> 1;
  const transform = complexFourierTransform(half);
  return ({ re, im }) => {
    const [a, b] = [new Float64Array(half), new Float64Array(half)];
    for (let k = 0; k < half; k++) {
      const mirror = half - k;
      // Lines 0 and N/2 of a real record are real.
      const [ownIm, otherIm] = [k === 0 ? 0 : im[k]!, mirror === half ? 0 : im[mirror]!];
      const [evenRe, evenIm] = [(re[k]! + re[mirror]!) / 2, (ownIm - otherIm) / 2];
      const [oddRe, oddIm] = [(re[k]! - re[mirror]!) / 2, (ownIm + otherIm) / 2];
      const angle = (2 * Math.PI * k) / length;
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      a[k] = evenRe - (oddRe * s + oddIm * c);
      b[k] = evenIm + (oddRe * c - oddIm * s);
    }
    // The inverse transform is the same one with both parts exchanged.
    transform(b, a);
    const record = new Float64Array(length);
    for (let n = 0; n < half; n++) {
      record[2 * n] = a[n]! / half;
      record[2 * n + 1] = b[n]! / half;
    }
    return record;
  };
}

/** Points of a response per decade between which it is interpolated: a resonance of quality 50 spans a score of them. */
const pointsPerDecade = 2000;

/**
 * A response told at points evenly spaced in ln f, and between four of them by a cubic: within 1e-5 of the response where
 * no resonance is sharper than a quality of 50. A transform asks for millions of frequencies, a chain is no cheap formula.
 */
export function tabulated(
  response: (frequency: number) => Complex,
  low: number,
  high: number,
  perDecade = pointsPerDecade,
): (frequency: number) => Complex {
  const step = Math.LN10 / perDecade;
  const start = Math.log(low) - 2 * step;
  const count = Math.ceil((Math.log(high) - start) / step) + 4;
  const [re, im] = [new Float64Array(count), new Float64Array(count)];
  for (let index = 0; index < count; index++) {
    const value = response(Math.exp(start + index * step));
    re[index] = value.re;
    im[index] = value.im;
  }
  return (frequency) => {
    const place = (Math.log(frequency) - start) / step;
    const from = Math.min(count - 3, Math.max(1, Math.floor(place)));
    const x = place - from;
    const a = (-x * (x - 1) * (x - 2)) / 6;
    const b = ((x + 1) * (x - 1) * (x - 2)) / 2;
    const c = (-(x + 1) * x * (x - 2)) / 2;
    const d = ((x + 1) * x * (x - 1)) / 6;
    return {
      re: a * re[from - 1]! + b * re[from]! + c * re[from + 1]! + d * re[from + 2]!,
      im: a * im[from - 1]! + b * im[from]! + c * im[from + 1]! + d * im[from + 2]!,
    };
  };
}

/** Transforms of one padded length, and records sent through responses by them. */
export class SpectralFilter {
  readonly rate: number;
  readonly length: number;
  readonly #samples: number;
  readonly #forward: (record: ArrayLike<number>) => Lines;
  readonly #inverse: (lines: Lines) => Float64Array;

  /** `tail` seconds of silence at least follow the record, so that what still rings does not come round to its start. */
  constructor(samples: number, rate: number, tail = 1) {
    this.rate = rate;
    this.#samples = samples;
    this.length = nextPowerOfTwo(samples + Math.ceil(tail * rate));
    this.#forward = realFourierTransform(this.length);
    this.#inverse = inverseRealTransform(this.length);
  }

  /** Distance of two lines in hertz. */
  get resolution(): number {
    return this.rate / this.length;
  }

  lines(record: Float64Array): Lines {
    const padded = new Float64Array(this.length);
    padded.set(record.subarray(0, this.#samples));
    return this.#forward(padded);
  }

  record(lines: Lines): Float64Array {
    return this.#inverse(lines).slice(0, this.#samples);
  }

  /** Each line times the response there; `atRest` is what a constant becomes. */
  times(lines: Lines, response: (frequency: number) => Complex, atRest: number): Lines {
    const at = tabulated(response, this.resolution, this.rate / 2);
    const count = lines.re.length;
    const [re, im] = [new Float64Array(count), new Float64Array(count)];
    re[0] = lines.re[0]! * atRest;
    for (let k = 1; k < count; k++) {
      const h = at(k * this.resolution);
      re[k] = lines.re[k]! * h.re - lines.im[k]! * h.im;
      im[k] = lines.re[k]! * h.im + lines.im[k]! * h.re;
    }
    return { re, im };
  }

  /** The record through a response. */
  through(record: Float64Array, response: (frequency: number) => Complex, atRest: number): Float64Array {
    return this.record(this.times(this.lines(record), response, atRest));
  }

  /**
   * The same where the response integrates: the record goes on into the silence turned round and with the other sign,
   * and fades. A record that merely breaks off leaves its last velocity behind, which would drive the whole of it away.
   */
  integrating(record: Float64Array, response: (frequency: number) => Complex, atRest: number): Float64Array {
    const padded = new Float64Array(this.length);
    padded.set(record.subarray(0, this.#samples));
    const fade = Math.min(this.length - this.#samples, this.#samples);
    for (let n = 0; n < fade; n++) {
      padded[this.#samples + n] = -record[this.#samples - 1 - n]! * (0.5 + 0.5 * Math.cos((Math.PI * (n + 1)) / fade));
    }
    return this.record(this.times(this.#forward(padded), response, atRest));
  }
}
