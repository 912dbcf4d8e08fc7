import type { DesignedMachine } from '../design/design.ts';
import { type Answer, thenAnswer } from '../quantity/index.ts';
import type { AmplitudeSpectrum } from '../signal/spectrum.ts';
import { type CourseTerm, turningCourse } from './course.ts';
import { passBand } from './recorded.ts';
import type { RehearsedMotion } from './rehearsed-motion.ts';
import { followedLine, type StandingLine, steadyLine } from './standing-line.ts';

/** Samples in which lines are looked for, and where they lie in time: so many record samples before, and between two. */
export interface LineSamples {
  readonly spectrum: AmplitudeSpectrum;
  readonly samples: Float64Array;
  readonly first: number;
  readonly every: number;
}

/** A line of the machine looked for in a record. */
export interface FoundLine extends StandingLine {
  /** At the end of the record, in hertz. */
  readonly frequency: number;
}

/** Looks for lines of a machine in what was recorded while it turned as the script has it. */
export type LineFinder = (
  terms: readonly CourseTerm[],
  inside: LineSamples,
  times?: number,
) => Answer<FoundLine | undefined>;

export function lineFinder(machine: DesignedMachine, motion: RehearsedMotion, recordRate: number): LineFinder {
  const { script } = motion;
  const lead = Math.round((motion.lead * recordRate) / motion.rate);
  const count = lead + Math.floor(((motion.samples.length - motion.lead) * recordRate) / motion.rate);
  const course = turningCourse(machine.stated.train, machine.frequencies, script.course, {
    samples: count,
    rate: recordRate,
    from: lead,
  });
  const moves = !(script.course.is === 'standstill' || (script.course.is === 'steady' && !script.course.wander));
  return (terms, { spectrum, samples, first, every }, times = 1) =>
    thenAnswer(course, (turning) =>
      thenAnswer(turning.follow(terms), (along) => {
        const frequency = times * along.frequency(count - 1);
        const inside = steadyLine(spectrum, frequency, passBand * spectrum.resolution * samples.length);
        if (inside === undefined) return { known: true, value: undefined };
        const at = (index: number) => Math.min(count - 1, lead + first + index * every);
        const found = moves ? followedLine(samples, (index) => times * along.cycles(at(index))) : inside;
        return { known: true, value: { ...found, frequency } };
      }),
    );
}
