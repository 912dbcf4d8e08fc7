import { type Fraction, fraction, greatestCommonDivisor, multiplied } from '../quantity/index.ts';

/** What two tooth counts decide between them. */
export interface ToothPair {
  /** N_A = gcd(z_1, z_2): groups of teeth that ever meet; each tooth meets z/N_A teeth of the other wheel. */
  readonly phases: number;
  /** Turns of the first wheel until the same two teeth meet again: z_2/N_A. */
  readonly turnsToMeet: number;
}

/** Source: gear frequencies as printed in trade notes (second-hand). */
export function toothPair(z1: number, z2: number): ToothPair {
  const phases = Number(greatestCommonDivisor(BigInt(z1), BigInt(z2)));
  return { phases, turnsToMeet: z2 / phases };
}

/**
 * Multiples of the speed f_1 of the wheel with z_1 teeth, exact: mesh z_1; hunting tooth N_A/z_2, the repeat of one
 * tooth pair; assembly phase z_1/N_A. Holds for two wheels on parallel, bevel or worm shafts, not for planetary sets.
 */
export function meshOrders(
  z1: number,
  z2: number,
): { mesh: Fraction; huntingTooth: Fraction; assemblyPhase: Fraction } {
  const { phases } = toothPair(z1, z2);
  const mesh = fraction(z1);
  return { mesh, huntingTooth: fraction(phases, z2), assemblyPhase: multiplied(mesh, fraction(1, phases)) };
}
