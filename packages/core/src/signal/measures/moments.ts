import { type Answer, answer } from '../../quantity/index.ts';
import { type Gathering, notThere } from './gathering.ts';

/** What one pass over a record says of its values, in the unit of the record. */
export interface Moments {
  /** Samples that are numbers; the others are left out of everything below. */
  readonly samples: number;
  readonly notNumbers: number;
  readonly infinite: number;
  /** Place of the first sample that is no finite number. */
  readonly firstBad?: number;
  readonly mean: number;
  /** √(Σx²/N), the mean included. */
  readonly rms: number;
  /** √(Σ(x − mean)²/N). */
  readonly acRms: number;
  readonly least: number;
  readonly greatest: number;
  /** The greatest distance from the mean. */
  readonly peak: number;
  readonly peakToPeak: number;
  /** peak / acRms; unknown where nothing moves. */
  readonly crest: Answer<number>;
  /** m₃/m₂^1.5 with the moments about the mean. */
  readonly skewness: Answer<number>;
  /** m₄/m₂²: 3 for Gaussian noise, 1.5 for a sine. */
  readonly kurtosis: Answer<number>;
}

/** Sums about the mean of a stretch: count, mean, Σd², Σd³, Σd⁴. */
interface Sums {
  readonly count: number;
  readonly mean: number;
  readonly second: number;
  readonly third: number;
  readonly fourth: number;
}

const stretch = 1024;

/**
 * Mean, rms, extremes, crest factor, skewness and kurtosis m₄/m₂² in one pass. Stretches of 1,024 samples are summed
 * about their own mean and joined by the formulas of Chan and of Pébay (2008, from memory), so that a large direct
 * component takes no digits away. NaN and infinite samples are counted and left out.
 */
export function moments(): Gathering<Answer<Moments>> {
  const waiting = new Float64Array(stretch);
  let filled = 0;
  let sums: Sums = { count: 0, mean: 0, second: 0, third: 0, fourth: 0 };
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  let [seen, notNumbers, infinite, firstBad] = [0, 0, 0, -1];

  return {
    take(samples) {
      for (let n = 0; n < samples.length; n++) {
        const x = samples[n]!;
        if (x - x !== 0) {
          if (firstBad < 0) firstBad = seen + n;
          if (Number.isNaN(x)) notNumbers++;
          else infinite++;
          continue;
        }
        if (x < least) least = x;
        if (x > greatest) greatest = x;
        waiting[filled++] = x;
        if (filled < stretch) continue;
        sums = joined(sums, sumsOf(waiting, stretch));
        filled = 0;
      }
      seen += samples.length;
    },
    result() {
      const all = joined(sums, sumsOf(waiting, filled));
      if (all.count === 0) return notThere('at least one sample that is a finite number');
      const { count, mean } = all;
      const variance = all.second / count;
      const acRms = Math.sqrt(variance);
      const peak = Math.max(greatest - mean, mean - least);
      // A record that stands still has no shape; what is left of its variance is rounding.
      const moves = greatest > least && variance > 0;
      const shape = (value: number) => (moves ? answer(value) : notThere('sample that differs from the others'));
      return answer({
        samples: count,
        notNumbers,
        infinite,
        ...(firstBad < 0 ? {} : { firstBad }),
        mean,
        rms: Math.hypot(mean, acRms),
        acRms,
        least,
        greatest,
        peak,
        peakToPeak: greatest - least,
        crest: shape(peak / acRms),
        skewness: shape(all.third / count / variance ** 1.5),
        kurtosis: shape(all.fourth / count / variance ** 2),
      });
    },
  };
}

function sumsOf(values: Float64Array, count: number): Sums {
  if (count === 0) return { count, mean: 0, second: 0, third: 0, fourth: 0 };
  const shift = values[0]!;
  let total = 0;
  for (let n = 0; n < count; n++) total += values[n]! - shift;
  const mean = shift + total / count;
  let [rest, second, third, fourth] = [0, 0, 0, 0];
  for (let n = 0; n < count; n++) {
    const d = values[n]! - mean;
    const square = d * d;
    rest += d;
    second += square;
    third += square * d;
    fourth += square * square;
  }
  return { count, mean, second: second - (rest * rest) / count, third, fourth };
}

function joined(a: Sums, b: Sums): Sums {
  if (a.count === 0) return b;
  if (b.count === 0) return a;
  const count = a.count + b.count;
  const d = b.mean - a.mean;
  const [p, q] = [a.count / count, b.count / count];
  const both = a.count * q;
  return {
    count,
    mean: a.mean + d * q,
    second: a.second + b.second + d * d * both,
    third: a.third + b.third + d ** 3 * both * (p - q) + 3 * d * (p * b.second - q * a.second),
    fourth:
      a.fourth +
      b.fourth +
      d ** 4 * both * (p * p - p * q + q * q) +
      6 * d * d * (p * p * b.second + q * q * a.second) +
      4 * d * (p * b.third - q * a.third),
  };
}
