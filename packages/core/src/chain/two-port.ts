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
    a: sum(product(first.a, second.a), product(first.b, second.c)),
    b: sum(product(first.a, second.b), product(first.b, second.d)),
    c: sum(product(first.c, second.a), product(first.d, second.c)),
    d: sum(product(first.c, second.b), product(first.d, second.d)),
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
export function openTransfer(port: TwoPort): Complex {
  return reciprocal(port.a);
}

/** Impedance seen looking back into the far port, the near one driven by an ideal source: b/a. */
export function outputImpedance(port: TwoPort): Complex {
  return quotient(port.b, port.a);
}

/** Transfer of a source in series with the line between two ports, to the open end of the second. */
export function transferFromJoint(before: TwoPort, after: TwoPort): Complex {
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
