import { Broken } from '../quantity/index.ts';
import { type Complex, complex, oneComplex, product, quotient, reciprocal, scaled } from './complex.ts';

/** The orders a filter may have here: 1..8. */
export const highestFilterOrder = 8;

/**
 * Butterworth low-pass of order n at f, both in hertz: |H| = 1/√(1 + (f/f_c)^2n), −3.01 dB at the corner for every
 * order, and a lag of n·45° there. Source: Butterworth 1930 (from memory).
 */
export function lowPass(frequency: number, corner: number, order: number): Complex {
  check(frequency, corner, order);
  const ratio = frequency / corner;
  let response = order % 2 === 1 ? reciprocal(complex(1, ratio)) : oneComplex;
  for (const damping of sectionDampings(order)) {
    response = product(response, reciprocal(complex(1 - ratio * ratio, 2 * damping * ratio)));
  }
  return response;
}

/**
 * Butterworth high-pass of order n at f, both in hertz: |H| = 1/√(1 + (f_c/f)^2n), a lead of n·45° at the corner,
 * zero at rest. It is the low-pass with jf/f_c exchanged for its reciprocal.
 */
export function highPass(frequency: number, corner: number, order: number): Complex {
  check(frequency, corner, order);
  const ratio = frequency / corner;
  let response = order % 2 === 1 ? quotient(complex(0, ratio), complex(1, ratio)) : oneComplex;
  for (const damping of sectionDampings(order)) {
    const section = complex(1 - ratio * ratio, 2 * damping * ratio);
    response = product(response, quotient(complex(-ratio * ratio, 0), section));
  }
  return response;
}

/** Damping ratios of the second-order sections: the poles lie evenly on the left half of the unit circle. */
function sectionDampings(order: number): readonly number[] {
  return dampingsByOrder[order]!;
}

/** Worked out once: a response asks for them at every frequency. */
const dampingsByOrder: readonly (readonly number[])[] = Array.from({ length: highestFilterOrder + 1 }, (_, order) =>
  Array.from({ length: Math.floor(order / 2) }, (_, k) => Math.sin(((2 * k + 1) * Math.PI) / (2 * order))),
);

/**
 * Base-excited resonator read as an accelerometer reads it: H = 1/(1 − r² + j·r/Q), r = f/f_n, Q = 1/(2ζ).
 * 1 at rest, Q with a lag of 90° at resonance. Source: single-degree-of-freedom resonator, any vibration textbook.
 */
export function resonance(frequency: number, natural: number, quality: number): Complex {
  if (!(frequency >= 0 && natural > 0 && quality > 0)) {
    throw new Broken('a resonance has a positive natural frequency and quality', { frequency, natural, quality });
  }
  const ratio = frequency / natural;
  return reciprocal(complex(1 - ratio * ratio, ratio / quality));
}

/**
 * Mass on a suspension, moved at its frame: H = r²/(1 − r² + 2jζr), r = f/f_0. It is the motion of the mass relative
 * to the frame over the motion of the frame (displacement over displacement, hence also velocity over velocity).
 *
 * Sign: far above f_0 the mass stands still and H → −1. A moving coil is wired so that motion of the case towards
 * positive gives a positive voltage; its output follows −H, which leads the velocity by atan2(2ζr, r² − 1): 180° far
 * below f_0, 90° at it for any damping, 0° far above. The magnitude is the same either way, 1/(2ζ) at f_0.
 * Source: Wielandt's seismometry notes.
 */
export function suspension(frequency: number, natural: number, damping: number): Complex {
  if (!(frequency >= 0 && natural > 0 && damping > 0)) {
    throw new Broken('a suspension has a positive natural frequency and damping', { frequency, natural, damping });
  }
  const ratio = frequency / natural;
  return scaled(reciprocal(complex(1 - ratio * ratio, 2 * damping * ratio)), ratio * ratio);
}

function check(frequency: number, corner: number, order: number): void {
  const known = Number.isInteger(order) && order >= 1 && order <= highestFilterOrder;
  if (known && corner > 0 && frequency >= 0 && Number.isFinite(frequency / corner)) return;
  throw new Broken('a filter has a positive corner and an order from 1 to 8', { frequency, corner, order });
}
