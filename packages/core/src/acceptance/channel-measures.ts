import { type Answer, answer, unanswered } from '../quantity/index.ts';
import type { Gathering } from '../signal/measures/gathering.ts';
import { type Moments, moments } from '../signal/measures/moments.ts';
import { type PowerDensity, powerDensity } from '../signal/measures/power-density.ts';
import { type TapsFound, taps } from '../signal/measures/taps.ts';
import { type ValuesHistogram, valuesHistogram } from '../signal/measures/values-histogram.ts';
import { type Course, CourseGathering } from './course.ts';
import { decimator } from './decimator.ts';

/** What was measured of one channel of a recording, in the SI unit of its numbers. */
export interface ChannelMeasures {
  readonly samples: number;
  /** Samples a second. */
  readonly rate: Answer<number>;
  readonly moments: Answer<Moments>;
  readonly course: Course;
  /** How the values lie and how fast they change. */
  readonly values: Answer<ValuesHistogram>;
  /** What stands out of the quiet like a tap. */
  readonly taps: Answer<TapsFound>;
  /** From direct voltage to half the sampling rate. */
  readonly density: Answer<PowerDensity>;
  /** The same with finer lines at the lower end, of the record thinned out; the first one where it is not thinned. */
  readonly slowDensity: Answer<PowerDensity>;
  /** The beginning of the record, as it is: at most `longestExcerpt` samples. */
  readonly excerpt: Float64Array;
}

/** What must be known of a channel before it is measured. */
export interface ChannelSettings {
  readonly rate: Answer<number>;
  /** How long the record is, where that is known beforehand: it decides how long a segment may be. */
  readonly samples: number | undefined;
}

export const longestExcerpt = 262_144;
const longestSegment = 65_536;
const shortestSegment = 256;
/** Segments a record is cut into at least, where it is long enough. */
const fewestSegments = 8;
/** A tap stands this far out of the quiet, and is followed for this long in seconds. */
const tapSettings = { factor: 12, duration: 0.25 } as const;
/** The thinned-out record keeps at least this many samples a second. */
const slowRate = 1000;

/** Everything the checks need of one channel, in one pass and bounded memory, whatever its length. */
export function channelMeasures({ rate, samples }: ChannelSettings): Gathering<ChannelMeasures> {
  const moved = moments();
  const course = new CourseGathering();
  const excerpt = new Float64Array(Math.min(longestExcerpt, samples ?? longestExcerpt));
  const timed = rate.known ? densities(rate.value, samples) : undefined;
  let seen = 0;
  return {
    take(block) {
      moved.take(block);
      course.take(block);
      timed?.take(block);
      const room = Math.max(0, excerpt.length - seen);
      if (room > 0) excerpt.set(block.subarray(0, room), seen);
      seen += block.length;
    },
    result() {
      const unknown = rate.known ? undefined : unanswered(rate.missing);
      const { density, slowDensity } = timed?.result() ?? { density: unknown!, slowDensity: unknown! };
      return {
        samples: seen,
        rate,
        moments: moved.result(),
        course: course.result(),
        values: timed?.values() ?? unknown!,
        taps: timed?.taps() ?? unknown!,
        density,
        slowDensity,
        excerpt: excerpt.subarray(0, Math.min(seen, excerpt.length)),
      };
    },
  };
}

function densities(rate: number, samples: number | undefined) {
  const settings = (at: number, count: number | undefined) =>
    ({ rate: at, length: segmentLength(count), window: 'hann', overlap: 0.5, detrend: 'mean' }) as const;
  const fine = powerDensity(settings(rate, samples));
  const by = 2 ** Math.max(0, Math.floor(Math.log2(rate / slowRate)));
  const slow =
    by === 1 ? undefined : powerDensity(settings(rate / by, samples === undefined ? undefined : samples / by));
  const thin = by === 1 ? undefined : decimator(by, rate);
  const lie = valuesHistogram(rate);
  const struck = taps({ rate, ...tapSettings, from: Math.min(50, rate / 100) });
  return {
    take(block: Float64Array) {
      fine.take(block);
      lie.take(block);
      struck.take(block);
      if (thin !== undefined) slow!.take(thin(block));
    },
    values: lie.result,
    taps: struck.result,
    result() {
      const density = fine.result();
      return { density, slowDensity: slow?.result() ?? density };
    },
  };
}

/** The longest power of two of which a record holds `fewestSegments`. */
function segmentLength(samples: number | undefined): number {
  if (samples === undefined) return longestSegment;
  const longest = 2 ** Math.floor(Math.log2(Math.max(1, samples / fewestSegments)));
  return Math.min(longestSegment, Math.max(shortestSegment, longest));
}

/** How long the record is in seconds. */
export function secondsOf({ samples, rate }: ChannelMeasures): Answer<number> {
  return rate.known ? answer(samples / rate.value) : rate;
}
