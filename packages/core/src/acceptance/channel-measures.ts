import type { Answer } from '../quantity/index.ts';
import type { Course } from './course.ts';

/** What was measured of one channel of a recording, in the SI unit of its numbers. */
export interface ChannelMeasures {
  readonly samples: number;
  /** Values that are no numbers; they are left out of everything else. */
  readonly notNumbers: number;
  /** Samples a second. */
  readonly rate: Answer<number>;
  readonly mean: number;
  readonly course: Course;
}
