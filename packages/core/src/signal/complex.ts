/**
 * A complex number: of a response, its magnitude is the ratio of the amplitudes and its phase the lead of the output
 * over the input in radians, for a motion written e^(+jωt).
 */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

/** re + j·im. */
export function complex(re: number, im: number): Complex {
  return { re, im };
}

export const zeroComplex: Complex = { re: 0, im: 0 };
export const oneComplex: Complex = { re: 1, im: 0 };

/** The imaginary unit, j with j² = −1. */
export const imaginary: Complex = { re: 0, im: 1 };

/** a + b. */
export function sum(a: Complex, b: Complex): Complex {
  return { re: a.re + b.re, im: a.im + b.im };
}

/** a − b. */
export function difference(a: Complex, b: Complex): Complex {
  return { re: a.re - b.re, im: a.im - b.im };
}

/** a · b. */
export function product(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

/**
 * a/b. The divisor is scaled by its larger part first (the method of R. L. Smith, 1962), so that squares of very
 * large or very small numbers never overflow. Division by zero gives infinite or not-a-number parts as it does for
 * real numbers: the caller answers for it.
 */
export function quotient(a: Complex, b: Complex): Complex {
  if (Math.abs(b.re) >= Math.abs(b.im)) {
    const ratio = b.im / b.re;
    const denominator = b.re + b.im * ratio;
    return { re: (a.re + a.im * ratio) / denominator, im: (a.im - a.re * ratio) / denominator };
  }
  const ratio = b.re / b.im;
  const denominator = b.re * ratio + b.im;
  return { re: (a.re * ratio + a.im) / denominator, im: (a.im * ratio - a.re) / denominator };
}

/** 1/a. */
export function reciprocal(a: Complex): Complex {
  return quotient(oneComplex, a);
}

/** |a|, without overflow of the squares. */
export function magnitude(a: Complex): number {
  return Math.hypot(a.re, a.im);
}

/** The angle of a in radians, in (−π, π]; 0 for zero. */
export function phase(a: Complex): number {
  return Math.atan2(a.im, a.re);
}

/** a times the real number `factor`. */
export function scaled(a: Complex, factor: number): Complex {
  return { re: a.re * factor, im: a.im * factor };
}
