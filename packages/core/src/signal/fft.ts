import { Broken } from '../quantity/index.ts';

/** The complex values of the lines 0..N/2 of a real record: line k stands at k/N of the sampling rate. */
export interface Lines {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Whether a length is 2ⁿ, from 1 up to 2³⁰. */
export function isPowerOfTwo(length: number): boolean {
  return Number.isInteger(length) && length >= 1 && length <= 2 ** 30 && (length & (length - 1)) === 0;
}

/**
 * Prepares the discrete Fourier transform of a length that is a power of two, X_k = Σ x_n·e^(−j2πkn/N), and gives the
 * function that carries it out in place. The inverse is the same function with re and im exchanged, divided by N.
 * Source: Cooley and Tukey 1965 (from memory), radix 2 after a bit-reversed ordering.
 */
export function complexFourierTransform(length: number): (re: Float64Array, im: Float64Array) => void {
  if (!isPowerOfTwo(length)) throw new Broken('the length of a transform is a power of two', { length });
  const half = length >> 1;
  const cosines = Float64Array.from({ length: half }, (_, k) => Math.cos((2 * Math.PI * k) / length));
  const sines = Float64Array.from({ length: half }, (_, k) => Math.sin((2 * Math.PI * k) / length));
  const order = bitReversal(length);
  return (re, im) => {
    for (let n = 0; n < length; n++) {
      const m = order[n]!;
      if (m <= n) continue;
      const [realPart, imaginaryPart] = [re[n]!, im[n]!];
      re[n] = re[m]!;
      im[n] = im[m]!;
      re[m] = realPart;
      im[m] = imaginaryPart;
    }
    for (let span = 1; span < length; span <<= 1) {
      const step = half / span;
      for (let start = 0; start < length; start += span << 1) {
        for (let k = 0, turn = 0; k < span; k++, turn += step) {
          const upper = start + k;
          const lower = upper + span;
          const [c, s] = [cosines[turn]!, sines[turn]!];
          const real = re[lower]! * c + im[lower]! * s;
          const imaginary = im[lower]! * c - re[lower]! * s;
          re[lower] = re[upper]! - real;
          im[lower] = im[upper]! - imaginary;
          re[upper] = re[upper]! + real;
          im[upper] = im[upper]! + imaginary;
        }
      }
    }
  };
}

/**
 * Prepares the transform of real records of one length, a power of two from 2, and gives the function that carries it
 * out. Even and odd samples travel as real and imaginary part of one complex transform of half the length.
 */
export function realFourierTransform(length: number): (record: ArrayLike<number>) => Lines {
  if (!isPowerOfTwo(length) || length < 2) {
    throw new Broken('the length of a transform is a power of two from 2', { length });
  }
  const half = length >> 1;
  const transform = complexFourierTransform(half);
  const cosines = Float64Array.from({ length: half }, (_, k) => Math.cos((2 * Math.PI * k) / length));
  const sines = Float64Array.from({ length: half }, (_, k) => Math.sin((2 * Math.PI * k) / length));
  const [even, odd] = [new Float64Array(half), new Float64Array(half)];
  return (record) => {
    if (record.length !== length) {
      throw new Broken('the record has the length its transform was prepared for', { length, record: record.length });
    }
    for (let n = 0; n < half; n++) {
      even[n] = record[2 * n]!;
      odd[n] = record[2 * n + 1]!;
    }
    transform(even, odd);
    const [re, im] = [new Float64Array(half + 1), new Float64Array(half + 1)];
    re[0] = even[0]! + odd[0]!;
    re[half] = even[0]! - odd[0]!;
    for (let k = 1; k < half; k++) {
      const mirror = half - k;
      const evenRe = (even[k]! + even[mirror]!) / 2;
      const evenIm = (odd[k]! - odd[mirror]!) / 2;
      const oddRe = (odd[k]! + odd[mirror]!) / 2;
      const oddIm = (even[mirror]! - even[k]!) / 2;
      re[k] = evenRe + cosines[k]! * oddRe + sines[k]! * oddIm;
      im[k] = evenIm + cosines[k]! * oddIm - sines[k]! * oddRe;
    }
    return { re, im };
  };
}

function bitReversal(length: number): Uint32Array {
  const order = new Uint32Array(length);
  for (let n = 1; n < length; n++) order[n] = (order[n >> 1]! >> 1) | (n & 1 ? length >> 1 : 0);
  return order;
}
