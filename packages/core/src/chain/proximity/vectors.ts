import { type Level, level, type Motion, Refusal } from '../../quantity/index.ts';
import { type Complex, difference, magnitude, phase, scaled, sum } from '../../signal/complex.ts';

/** A line of a spectrum against the once-per-turn mark: its amplitude, and its phase in radians, lag counted positive. */
export interface Vector<M extends Motion = Motion> {
  readonly amplitude: Level<M>;
  readonly phase: number;
}

const turn = 2 * Math.PI;

/** An angle in 0 to 2π. */
export function withinTurn(angle: number): number {
  const within = angle - turn * Math.floor(angle / turn);
  return within >= turn ? 0 : within;
}

function asComplex({ amplitude, phase: angle }: Vector): Complex {
  return scaled({ re: Math.cos(angle), im: Math.sin(angle) }, amplitude.value);
}

function asVector<M extends Motion>(value: Complex, like: Level<M>): Vector<M> {
  return {
    amplitude: level(like.quantity, magnitude(value), like.detector, like.band),
    phase: withinTurn(phase(value)),
  };
}

/** Refuses two vectors of unlike motion or detector: their sum would be a number without meaning. */
function alike(a: Level, b: Level): void {
  if (a.quantity === b.quantity && a.detector === b.detector) return;
  throw new Refusal({
    read: `a ${a.detector} ${a.quantity} beside a ${b.detector} ${b.quantity}`,
    expected: 'two vectors of one motion and detector',
  });
}

/**
 * Running vector less the slow-roll vector, A·e^(jα) − B·e^(jβ): what the shaft does beyond its run-out. Amplitudes of
 * one detector, phases in radians. Subtracting the magnitudes instead is right only where both phases agree.
 * Source: API 670 practice (from memory).
 */
export function vectorDifference<M extends Motion>(running: Vector<M>, slowRoll: Vector<M>): Vector<M> {
  alike(running.amplitude, slowRoll.amplitude);
  return asVector(difference(asComplex(running), asComplex(slowRoll)), running.amplitude);
}

/** Sum of two vectors: the shaft in space is its motion in the bearing plus the motion of the bearing. */
export function vectorSum<M extends Motion>(a: Vector<M>, b: Vector<M>): Vector<M> {
  alike(a.amplitude, b.amplitude);
  return asVector(sum(asComplex(a), asComplex(b)), a.amplitude);
}

/** √(a² + b²): the sum of two amplitudes whose phases to each other are not known and wander. */
export function rmsSum<M extends Motion>(a: Level<M>, b: Level<M>): Level<M> {
  alike(a, b);
  return level(a.quantity, Math.hypot(a.value, b.value), a.detector, a.band);
}
