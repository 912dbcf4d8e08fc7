import type { Band, Level, Motion } from '../../quantity/index.ts';
import type { Random } from '../../uncertainty/random.ts';
import type { CourseTerm, TurningCourse } from '../course.ts';

/** Something a rehearsed motion is made of, before it is written as samples. */
interface AnyPart {
  /** What an analyst would call it: `3 × pump-drive-end/inner-ring`. */
  readonly name: string;
  readonly level: Level<Motion>;
  /** What was taken for granted. */
  readonly assumed?: readonly string[];
}

/** The strength of a part follows the turns of something: 1 + depth·cos(2π·cycles + phase). */
export interface Modulation {
  readonly of: readonly CourseTerm[];
  readonly depth: number;
  readonly phase?: number;
}

/** A line that moves with the machine. */
export interface TonePart extends AnyPart {
  readonly is: 'tone';
  readonly of: readonly CourseTerm[];
  /** In radians at the first sample; drawn where left out. */
  readonly phase?: number;
  /** Power of the speed with which it grows; its level holds at the highest speed of the record. 0 where left out. */
  readonly grows?: number;
  readonly modulatedBy?: readonly Modulation[];
}

/** A mode that a blow sets ringing: a·e^(−ζωt)·sin(ωt). */
export interface Mode {
  readonly frequency: number;
  readonly damping: number;
  /** Share of the blow it takes. */
  readonly share: number;
}

/** Blows that return, each of which sets modes ringing. Its level is the peak of one blow at its hardest. */
export interface ImpactsPart extends AnyPart {
  readonly is: 'impacts';
  readonly of: readonly CourseTerm[];
  readonly modes: readonly Mode[];
  /** Standard deviation of the distance of two blows, relative: the elements slip, and the phase is lost little by little. */
  readonly slip: number;
  /** Standard deviation of the strength of a blow, relative. */
  readonly scatter: number;
  /** Strength of a blow by the turns of something, 0 to 1. */
  readonly weighed?: { readonly of: readonly CourseTerm[]; weight(turn: number): number };
  /** Strength of every second blow. */
  readonly alternate?: number;
  readonly grows?: number;
}

/** A mark on a shaft that passes a probe: a dip of a width, in turns. Level: its depth, as a peak. */
export interface MarkPart extends AnyPart {
  readonly is: 'mark';
  readonly of: readonly CourseTerm[];
  readonly width: number;
}

/** Noise in a band, equally strong at all its frequencies in the motion of its level. */
export interface NoisePart extends AnyPart {
  readonly is: 'noise';
  readonly band: Band;
  readonly modulatedBy?: readonly Modulation[];
}

export type MotionPart = TonePart | ImpactsPart | MarkPart | NoisePart;

/** Where a part is written: the samples, in this motion, and the course along them. */
export interface Canvas {
  readonly samples: Float64Array;
  readonly motion: Motion;
  readonly course: TurningCourse;
  /** Highest speed of the reference shaft within the record, in hertz. */
  readonly fastest: number;
  readonly random: Random;
}
