import { type Answer, answer } from '../../quantity/index.ts';
import { complexFourierTransform } from '../fft.ts';
import { type Gathering, notThere, tooShort } from './gathering.ts';
import { segmentCutter } from './power-density.ts';

/** A band that was tried. */
export interface CandidateBand {
  readonly low: number;
  readonly high: number;
  /** ⟨|c|⁴⟩/⟨|c|²⟩² − 2 of the complex envelope c: 0 for noise, −1 for a steady tone, large for impacts. */
  readonly kurtosis: number;
  /** Standard deviation the kurtosis of as much Gaussian noise would have: 2/√samples. */
  readonly deviation: number;
  /** rms of the record in the band. */
  readonly rms: number;
}

export interface EnvelopeBandSettings {
  /** Samples a second. */
  readonly rate: number;
  /** Nothing below this is tried, in hertz: shaft and mesh lines lie there. */
  readonly from: number;
  /** Nothing above this is tried, in hertz. */
  readonly to: number;
  /** No band narrower than this is tried, in hertz: three times the highest frequency sought in the envelope. */
  readonly leastWidth: number;
}

export interface EnvelopeBandChoice {
  readonly settings: EnvelopeBandSettings;
  readonly method: string;
  /** Every band that was tried, from the most impulsive down. */
  readonly tried: readonly CandidateBand[];
  /** The most impulsive one, where it stands four deviations out of noise. */
  readonly chosen: Answer<CandidateBand>;
  /** Why, in words. */
  readonly reason: string;
}

export const envelopeBandMethod =
  'kurtosis of the complex envelope over dyadic bands, after the fast kurtogram (Antoni 2007, from memory), with ' +
  'rectangular bands cut out of the transform of tapered stretches';

const stretch = 2 ** 15;
const margin = stretch / 8;

/**
 * The band in which a record is most impulsive: spectral kurtosis ⟨|c|⁴⟩/⟨|c|²⟩² − 2 of bands of a half, a quarter … of
 * f_s/2. Stretches of 32,768 samples are tapered at their ends, and only the middle three quarters are counted.
 */
export function envelopeBandChoice(settings: EnvelopeBandSettings): Gathering<Answer<EnvelopeBandChoice>> {
  const { rate, from, to, leastWidth } = settings;
  const bands = dyadicBands(rate, from, to, leastWidth);
  const transform = complexFourierTransform(stretch);
  const taper = Float64Array.from({ length: stretch }, (_, n) => {
    const inside = Math.min(n + 0.5, stretch - n - 0.5) / margin;
    return inside >= 1 ? 1 : Math.sin((Math.PI / 2) * inside) ** 2;
  });
  const [re, im] = [new Float64Array(stretch), new Float64Array(stretch)];
  const cut = segmentCutter(stretch, stretch - 2 * margin);
  let [stretches, leftOut] = [0, 0];
  const add = (samples: Float64Array, start: number) => {
    let sum = 0;
    for (let n = 0; n < stretch; n++) {
      sum += samples[start + n]!;
      re[n] = samples[start + n]! * taper[n]!;
    }
    if (sum - sum !== 0) {
      leftOut++;
      return;
    }
    im.fill(0);
    transform(re, im);
    for (const band of bands) band.add(re, im);
    stretches++;
  };
  return {
    take: (samples) => cut.take(samples, add),
    result() {
      if (stretches === 0) {
        return leftOut > 0
          ? notThere('stretch of finite numbers long enough to choose a band')
          : tooShort(cut.waiting(), stretch);
      }
      const tried = bands.map((band) => band.found()).sort((a, b) => b.kurtosis - a.kurtosis);
      const best = tried[0];
      if (best === undefined) return notThere(`band of at least ${leastWidth} Hz between ${from} Hz and ${to} Hz`);
      const stands = best.kurtosis > 4 * best.deviation;
      const numbers = `its kurtosis is ${best.kurtosis.toFixed(2)}, noise would give 0 ± ${best.deviation.toFixed(2)}`;
      return answer({
        settings,
        method: envelopeBandMethod,
        tried,
        chosen: stands ? answer(best) : notThere('band whose envelope is more impulsive than noise'),
        reason: stands
          ? `Of ${tried.length} bands the most impulsive one: ${numbers}.`
          : `None of ${tried.length} bands is more impulsive than noise: of the foremost one ${numbers}.`,
      });
    },
  };
}

function dyadicBands(rate: number, from: number, to: number, leastWidth: number) {
  const bands: ReturnType<typeof runningBand>[] = [];
  for (let parts = 2; rate / 2 / parts >= leastWidth && parts <= 256; parts *= 2) {
    const lines = stretch / 2 / parts;
    const inverse = complexFourierTransform(lines);
    for (let part = 0; part < parts; part++) {
      const [low, high] = [(part * rate) / 2 / parts, ((part + 1) * rate) / 2 / parts];
      if (low >= from && high <= to) bands.push(runningBand(low, high, part * lines, lines, inverse));
    }
  }
  return bands;
}

function runningBand(
  low: number,
  high: number,
  first: number,
  lines: number,
  transform: (re: Float64Array, im: Float64Array) => void,
) {
  const [re, im] = [new Float64Array(lines), new Float64Array(lines)];
  let [count, squares, fourths] = [0, 0, 0];
  return {
    add(linesRe: Float64Array, linesIm: Float64Array) {
      re.set(linesRe.subarray(first, first + lines));
      im.set(linesIm.subarray(first, first + lines));
      // Inverse: parts exchanged.
      transform(im, re);
      const edge = lines / 8;
      for (let n = edge; n < lines - edge; n++) {
        const power = re[n]! * re[n]! + im[n]! * im[n]!;
        squares += power;
        fourths += power * power;
      }
      count += lines - 2 * edge;
    },
    found(): CandidateBand {
      const mean = squares / count;
      return {
        low,
        high,
        kurtosis: mean === 0 ? 0 : fourths / count / (mean * mean) - 2,
        deviation: 2 / Math.sqrt(count),
        // The envelope of the band is twice its analytic half, whose lines were divided by nothing so far.
        rms: (Math.SQRT2 * Math.sqrt(mean)) / stretch,
      };
    },
  };
}
