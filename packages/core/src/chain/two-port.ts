import {
  type Complex,
  complex,
  oneComplex,
  product,
  quotient,
  reciprocal,
  sum,
  zeroComplex,
} from '../signal/complex.ts';

/**
 * A two-port in chain form: [x₁, y₁]ᵀ = [[a, b], [c, d]] · [x₂, y₂]ᵀ with x across and y through each port. Stages in
 * a row multiply, loading included; the same algebra backwards takes a stage off again. Source: any network textbook
 * (from memory).
 */
export interface TwoPort {
  readonly a: Complex;
  readonly b: Complex;
  readonly c: Complex;
  readonly d: Complex;
}

export const straightThrough: TwoPort = { a: oneComplex, b: zeroComplex, c: zeroComplex, d: oneComplex };

export function cascade(first: TwoPort, second: TwoPort): TwoPort {
  return {
    a: sumOfProducts(first.a, second.a, first.b, second.c),
    b: sumOfProducts(first.a, second.b, first.b, second.d),
    c: sumOfProducts(first.c, second.a, first.d, second.c),
    d: sumOfProducts(first.c, second.b, first.d, second.d),
  };
}

export type UpperRow = Pick<TwoPort, 'a' | 'b'>;
export type FirstColumn = Pick<TwoPort, 'a' | 'c'>;

/** Of a cascade only a and b, to the last digit as `cascade` gives them. */
export function upperRow({ a, b }: UpperRow, second: TwoPort): UpperRow {
  return {
    a: sumOfProducts(a, second.a, b, second.c),
    b: sumOfProducts(a, second.b, b, second.d),
  };
}

/** Of a cascade only a and c, to the last digit as `cascade` gives them. */
export function firstColumn(first: TwoPort, { a, c }: FirstColumn): FirstColumn {
  return {
    a: sumOfProducts(first.a, a, first.b, c),
    c: sumOfProducts(first.c, a, first.d, c),
  };
}

/** p·q + r·s in one step: these four products are most of what a response costs. */
function sumOfProducts(p: Complex, q: Complex, r: Complex, s: Complex): Complex {
  return {
    re: p.re * q.re - p.im * q.im + (r.re * s.re - r.im * s.im),
    im: p.re * q.im + p.im * q.re + (r.re * s.im + r.im * s.re),
  };
}

/** An impedance in the line. */
export function seriesImpedance(impedance: Complex): TwoPort {
  return { a: oneComplex, b: impedance, c: zeroComplex, d: oneComplex };
}

/** An admittance across the line. */
export function shuntAdmittance(admittance: Complex): TwoPort {
  return { a: oneComplex, b: zeroComplex, c: admittance, d: oneComplex };
}

/** A stage that neither loads what stands before it nor is loaded by what follows: x₂ = gain · x₁. */
export function isolatedGain(gain: Complex): TwoPort {
  return { a: reciprocal(gain), b: zeroComplex, c: zeroComplex, d: zeroComplex };
}

/** x₂/x₁ with nothing connected behind: 1/a. */
export function openTransfer(port: Pick<TwoPort, 'a'>): Complex {
  return reciprocal(port.a);
}

/** Impedance seen looking back into the far port, the near one driven by an ideal source: b/a. */
export function outputImpedance(port: UpperRow): Complex {
  return quotient(port.b, port.a);
}

/** Transfer of a source in series with the line between two ports, to the open end of the second. */
export function transferFromJoint(before: UpperRow, after: FirstColumn): Complex {
  const loading = product(outputImpedance(before), after.c);
  return reciprocal(sum(after.a, loading));
}

/** Resistance R and inductance L in series with capacitance C across, half at each end: a length of cable, lumped. */
export function lumpedLine(
  resistance: number,
  inductance: number,
  capacitance: number,
  angularFrequency: number,
): TwoPort {
  const half = shuntAdmittance(complex(0, (angularFrequency * capacitance) / 2));
  const along = seriesImpedance(complex(resistance, angularFrequency * inductance));
  return cascade(cascade(half, along), half);
}
