import { type Fraction, toNumber } from '../quantity/index.ts';

/**
 * Fewest turns of a slow shaft that are at least `least` and in which the pulses of a fast one, `ratio` turns to one,
 * come out whole: a multiple of the denominator.
 */
export function wholeTurns(least: number, ratio: Fraction): number {
  const repeat = Number(ratio.denominator);
  return Math.ceil(least / repeat - 1e-9) * repeat;
}

/**
 * How far a record of so many turns drifts, in degrees of the slow shaft, where its angle is counted with a rounded
 * ratio: 360·turns·|rounded/ratio − 1|.
 */
export function ratioDrift(ratio: Fraction, rounded: number, turns: number): number {
  return 360 * turns * Math.abs(rounded / toNumber(ratio) - 1);
}

/** Degrees by which two channels not sampled at one instant differ in phase: 360·f·t, f in hertz, t in seconds. */
export function phaseSkew(frequency: number, delay: number): number {
  return 360 * frequency * delay;
}
