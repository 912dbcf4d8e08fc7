import type { Band, Level, Motion } from '../quantity/index.ts';

/** A speed: a state of the machine by its name, or turns a second of the shaft all speeds are counted in. */
export type SpeedStatement = string | number;

/** How the machine turns while it is recorded. */
export type SpeedCourse =
  /** At one speed that may stray by `wander` of it, from least to most. */
  | { readonly is: 'steady'; readonly at: SpeedStatement; readonly wander?: number }
  /** Evenly from one speed to the other over the whole record. */
  | { readonly is: 'ramp'; readonly from: SpeedStatement; readonly to: SpeedStatement }
  /** Quickly at first and then ever more slowly towards the last speed, as a machine that runs up on its torque. */
  | { readonly is: 'run-up'; readonly from: SpeedStatement; readonly to: SpeedStatement }
  /** Nothing turns. */
  | { readonly is: 'standstill' };

/** A fault of the machine at a size. */
export interface FaultStatement {
  /** A word of the list of faults: `outer-ring`. */
  readonly kind: string;
  /** The shaft or element it sits at. */
  readonly at: string;
  readonly size: Level<Motion>;
  /** Angle of its first component against the turns of its shaft, in radians; drawn from the seed where left out. */
  readonly phase?: number;
}

/** Broadband motion that is there whatever turns. */
export interface Background {
  readonly name: string;
  readonly level: Level<Motion>;
  readonly band: Band;
}

/** Everything that makes a rehearsed motion; the same script gives the same motion on every machine. */
export interface RehearsalScript {
  readonly seconds: number;
  /** Samples a second of the motion; well above the mounted resonance where the record is to show overload. */
  readonly rate: number;
  readonly seed: number;
  readonly course: SpeedCourse;
  /** Seconds of motion before the record, in which the chain settles; 1 where left out. */
  readonly lead?: number;
  /** Share of the smallest level of each target at which a healthy machine shows it; 0 leaves them out. */
  readonly healthy: number;
  readonly faults: readonly FaultStatement[];
  readonly background: readonly Background[];
}

export const usualLead = 1;
