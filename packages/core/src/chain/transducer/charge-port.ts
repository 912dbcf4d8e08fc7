import { complex, oneComplex, zeroComplex } from '../../signal/complex.ts';
import type { LeakyCapacitance } from '../formulas/charge-converter.ts';
import type { TwoPort } from '../two-port.ts';

/**
 * At a charge port the charge is what passes and the voltage what stands across, so both change places against a
 * voltage port: x is the charge that flows on, y the voltage; nothing behind it means a short, as a virtual ground is.
 * What lies across the line takes charge away in proportion to the voltage: q₁ = q₂ + (C + 1/(jωR))·v.
 */
export function chargeLeak(across: LeakyCapacitance, frequency: number): TwoPort {
  return { a: oneComplex, b: chargePerVolt(across, frequency), c: zeroComplex, d: oneComplex };
}

/** An amplifier with a capacitance and a resistance fed back; an infinite gain where none is stated. */
export interface ChargeConverter {
  readonly feedback: LeakyCapacitance;
  readonly gain: number | undefined;
}

/**
 * Charge to voltage: q = V·(1 + 1/A)·(C_f + 1/(jωR_f)), and V/A is left across its input. With the leak before it the
 * error of a finite gain comes out as (C_s + C_c + C_f)/(A·C_f).
 */
export function converterPort({ feedback, gain }: ChargeConverter, frequency: number): TwoPort {
  const inverse = gain === undefined ? 0 : 1 / gain;
  const perVolt = chargePerVolt(feedback, frequency);
  return {
    a: complex(perVolt.re * (1 + inverse), perVolt.im * (1 + inverse)),
    b: zeroComplex,
    c: complex(inverse, 0),
    d: zeroComplex,
  };
}

/** Y/(jω) = C − j/(ωR), in coulomb per volt. */
function chargePerVolt({ capacitance, resistance }: LeakyCapacitance, frequency: number) {
  return complex(capacitance, resistance === undefined ? 0 : -1 / (2 * Math.PI * frequency * resistance));
}
