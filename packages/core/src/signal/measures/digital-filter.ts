import { Broken } from '../../quantity/index.ts';
import { type Complex, complex, oneComplex, product, quotient } from '../complex.ts';
import { highestFilterOrder } from '../filters.ts';

/** One second-order section, y/x = (b0 + b1·z⁻¹ + b2·z⁻²)/(1 + a1·z⁻¹ + a2·z⁻²). */
export interface FilterSection {
  readonly b0: number;
  readonly b1: number;
  readonly b2: number;
  readonly a1: number;
  readonly a2: number;
}

/**
 * Sections of a digital Butterworth low-pass of order 1..8: |H| = 1/√(1 + (T/T_c)^2n) with T = tan(πf/f_s), so that the
 * corner in hertz is kept exactly. Bilinear transform with the corner warped beforehand.
 */
export function digitalLowPass(corner: number, order: number, rate: number): readonly FilterSection[] {
  const warped = warpedCorner(corner, order, rate);
  return prototypeOf(order).map(({ damping }) => {
    if (damping === undefined) return fromAnalog([0, 0, warped], [0, 1, warped]);
    return fromAnalog([0, 0, warped ** 2], [1, 2 * damping * warped, warped ** 2]);
  });
}

/** Sections of a digital Butterworth high-pass of order 1..8: |H| = 1/√(1 + (T_c/T)^2n), T = tan(πf/f_s). */
export function digitalHighPass(corner: number, order: number, rate: number): readonly FilterSection[] {
  const warped = warpedCorner(corner, order, rate);
  return prototypeOf(order).map(({ damping }) => {
    if (damping === undefined) return fromAnalog([0, 1, 0], [0, 1, warped]);
    return fromAnalog([1, 0, 0], [1, 2 * damping * warped, warped ** 2]);
  });
}

/**
 * Sections of a digital Butterworth band-pass whose slopes each have the order 1..8: the low-pass of that order with
 * s → (s² + T_1·T_2)/(s·(T_2 − T_1)), T = tan(πf/f_s), which puts −3.01 dB on both corners.
 */
export function digitalBandPass(low: number, high: number, order: number, rate: number): readonly FilterSection[] {
  const [from, to] = [warpedCorner(low, order, rate), warpedCorner(high, order, rate)];
  if (!(to > from)) throw new Broken('a band-pass has its lower corner below its upper one', { low, high });
  const width = to - from;
  const centre = from * to;
  return prototypeOf(order).flatMap(({ damping }) => {
    if (damping === undefined) return [fromAnalog([0, width, 0], [1, width, centre])];
    // The poles of the prototype, −ζ ± j√(1−ζ²), become two pairs: the roots of s² − p·width·s + centre.
    const pole = complex(-damping * width, Math.sqrt(1 - damping * damping) * width);
    const root = squareRoot(complex(pole.re ** 2 - pole.im ** 2 - 4 * centre, 2 * pole.re * pole.im));
    return [1, -1].map((sign) => {
      const re = (pole.re + sign * root.re) / 2;
      const im = (pole.im + sign * root.im) / 2;
      return fromAnalog([0, width, 0], [1, -2 * re, re * re + im * im]);
    });
  });
}

/**
 * Section of a resonator, 1/(1 − r² + j·r/Q) with r = T/T_n, T = tan(πf/f_s): 1 at rest, Q with a lag of 90° at its
 * natural frequency, both exactly; near half the sampling rate it falls to zero faster than the analogue one.
 */
export function digitalResonance(natural: number, quality: number, rate: number): readonly FilterSection[] {
  const warped = warpedCorner(natural, 1, rate);
  if (!(quality > 0)) throw new Broken('a resonance has a positive quality', { quality });
  return [fromAnalog([0, 0, warped ** 2], [1, warped / quality, warped ** 2])];
}

/** The response of sections at a frequency in hertz: the product of their (b0 + b1·z⁻¹ + …)/(1 + a1·z⁻¹ + …). */
export function digitalResponse(sections: readonly FilterSection[], frequency: number, rate: number): Complex {
  const angle = (-2 * Math.PI * frequency) / rate;
  const [c, s, c2, s2] = [Math.cos(angle), Math.sin(angle), Math.cos(2 * angle), Math.sin(2 * angle)];
  return sections.reduce((response, { b0, b1, b2, a1, a2 }) => {
    const numerator = complex(b0 + b1 * c + b2 * c2, b1 * s + b2 * s2);
    return product(response, quotient(numerator, complex(1 + a1 * c + a2 * c2, a1 * s + a2 * s2)));
  }, oneComplex);
}

/** A filter that keeps its state from block to block. */
export interface RunningFilter {
  /** Filters a block in place. */
  through(samples: Float64Array): void;
}

/**
 * Runs sections over blocks as y = b0·x + s1, s1 = b1·x − a1·y + s2, s2 = b2·x − a2·y (transposed direct form II).
 * From rest, or as though the first value had stood for ever: then a high-pass begins at zero instead of with a step.
 */
export function runningFilter(sections: readonly FilterSection[], begins: 'at-rest' | 'steady'): RunningFilter {
  const states = sections.map(() => new Float64Array(2));
  let begun = begins === 'at-rest';
  return {
    through(samples) {
      if (!begun && samples.length > 0) {
        settle(sections, states, samples[0]!);
        begun = true;
      }
      for (let index = 0; index < sections.length; index++) throughSection(sections[index]!, states[index]!, samples);
    },
  };
}

/** A block filtered from the start, into a new array of the same unit and number of samples. */
export function filtered(
  sections: readonly FilterSection[],
  samples: Float64Array,
  begins: 'at-rest' | 'steady' = 'at-rest',
): Float64Array {
  const through = Float64Array.from(samples);
  runningFilter(sections, begins).through(through);
  return through;
}

function throughSection(section: FilterSection, state: Float64Array, samples: Float64Array): void {
  const { b0, b1, b2, a1, a2 } = section;
  let s1 = state[0]!;
  let s2 = state[1]!;
  for (let n = 0; n < samples.length; n++) {
    const x = samples[n]!;
    const y = b0 * x + s1;
    s1 = b1 * x - a1 * y + s2;
    s2 = b2 * x - a2 * y;
    samples[n] = y;
  }
  // What has died away is nothing: numbers too small for full precision would make the loop many times slower.
  state[0] = Math.abs(s1) < 1e-290 ? 0 : s1;
  state[1] = Math.abs(s2) < 1e-290 ? 0 : s2;
}

function settle(sections: readonly FilterSection[], states: readonly Float64Array[], first: number): void {
  let x = first;
  for (const [index, { b0, b1, b2, a1, a2 }] of sections.entries()) {
    const y = ((b0 + b1 + b2) / (1 + a1 + a2)) * x;
    states[index]![0] = y - b0 * x;
    states[index]![1] = b2 * x - a2 * y;
    x = y;
  }
}

/** s = (1 − z⁻¹)/(1 + z⁻¹) put into (n2·s² + n1·s + n0)/(d2·s² + d1·s + d0). */
function fromAnalog(
  [n2, n1, n0]: readonly [number, number, number],
  [d2, d1, d0]: readonly [number, number, number],
): FilterSection {
  if (d2 === 0)
    return { b0: (n1 + n0) / (d1 + d0), b1: (n0 - n1) / (d1 + d0), b2: 0, a1: (d0 - d1) / (d1 + d0), a2: 0 };
  const scale = 1 / (d2 + d1 + d0);
  return {
    b0: (n2 + n1 + n0) * scale,
    b1: 2 * (n0 - n2) * scale,
    b2: (n2 - n1 + n0) * scale,
    a1: 2 * (d0 - d2) * scale,
    a2: (d2 - d1 + d0) * scale,
  };
}

/** The sections of the prototype with its corner at one: those of second order by their damping, and one of first. */
function prototypeOf(order: number): readonly { readonly damping?: number }[] {
  const pairs = Array.from({ length: Math.floor(order / 2) }, (_, k) => ({
    damping: Math.sin(((2 * k + 1) * Math.PI) / (2 * order)),
  }));
  return order % 2 === 1 ? [{}, ...pairs] : pairs;
}

function warpedCorner(corner: number, order: number, rate: number): number {
  const known = Number.isInteger(order) && order >= 1 && order <= highestFilterOrder;
  if (!(known && corner > 0 && corner < rate / 2)) {
    throw new Broken('a digital filter has an order from 1 to 8 and its corner below half the sampling rate', {
      corner,
      order,
      rate,
    });
  }
  return Math.tan((Math.PI * corner) / rate);
}

/** The square root in the right half plane. */
function squareRoot({ re, im }: Complex): Complex {
  const size = Math.hypot(re, im);
  const real = Math.sqrt(Math.max(0, (size + re) / 2));
  const imaginary = Math.sqrt(Math.max(0, (size - re) / 2));
  return complex(real, im < 0 ? -imaginary : imaginary);
}
