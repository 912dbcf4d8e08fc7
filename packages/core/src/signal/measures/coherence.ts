import { type Answer, answer, Broken } from '../../quantity/index.ts';
import { realFourierTransform } from '../fft.ts';
import { notThere, type PairGathering, tooShort } from './gathering.ts';
import { type DensitySettings, effectiveAverages, segmentCutter, segmentsOf } from './power-density.ts';

/** What two channels have in common, line by line. */
export interface CrossSpectrum extends DensitySettings {
  readonly resolution: number;
  /** |G₁₂|²/(G₁₁·G₂₂), from 0 to 1. */
  readonly coherence: Float64Array;
  /** One-sided cross density, conj(X₁)·X₂. */
  readonly crossRe: Float64Array;
  readonly crossIm: Float64Array;
  /** Response of the second over the first, H₁ = G₁₂/G₁₁: right where noise is in the second only. */
  readonly responseRe: Float64Array;
  readonly responseIm: Float64Array;
  readonly first: Float64Array;
  readonly second: Float64Array;
  readonly segments: number;
  readonly effectiveAverages: number;
  /** Equivalent noise bandwidth of the window in hertz. */
  readonly noiseBandwidth: number;
}

/**
 * Coherence, cross spectrum and response H₁ by Welch's method. Of one segment every coherence is 1, so at least two are
 * asked for; of K independent ones two channels that share nothing still show 1/K.
 */
export function crossSpectrum(settings: DensitySettings): PairGathering<Answer<CrossSpectrum>> {
  const { rate, length, detrend } = settings;
  const { weights, hop, squares, noiseBandwidth } = segmentsOf(settings);
  const transform = realFourierTransform(length);
  const lines = length / 2 + 1;
  const [one, two, re, im] = [0, 0, 0, 0].map(() => new Float64Array(lines)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const [firstCut, secondCut] = [segmentCutter(length, hop), segmentCutter(length, hop)];
  let [segments, leftOut] = [0, 0];

  const weighted = (from: Float64Array, start: number): Float64Array | undefined => {
    let sum = 0;
    for (let n = 0; n < length; n++) sum += from[start + n]!;
    if (sum - sum !== 0) return undefined;
    const mean = detrend === 'mean' ? sum / length : 0;
    return weights.map((weight, n) => (from[start + n]! - mean) * weight);
  };
  const add = (first: Float64Array | undefined, second: Float64Array | undefined) => {
    if (first === undefined || second === undefined) {
      leftOut++;
      return;
    }
    const [a, b] = [transform(first), transform(second)];
    for (let k = 0; k < lines; k++) {
      const [ar, ai, br, bi] = [a.re[k]!, a.im[k]!, b.re[k]!, b.im[k]!];
      one[k]! += ar * ar + ai * ai;
      two[k]! += br * br + bi * bi;
      re[k]! += ar * br + ai * bi;
      im[k]! += ar * bi - ai * br;
    }
    segments++;
  };

  return {
    take(first, second) {
      if (first.length !== second.length) {
        throw new Broken('two channels give blocks of one length', { first: first.length, second: second.length });
      }
      // In steps of at most a segment, so that no more than one of the first waits for its partner.
      for (let start = 0; start < first.length; start += hop) {
        const end = Math.min(first.length, start + hop);
        let waiting: Float64Array | undefined;
        let whole = false;
        firstCut.take(first.subarray(start, end), (from, at) => {
          waiting = weighted(from, at);
          whole = true;
        });
        secondCut.take(second.subarray(start, end), (from, at) => {
          if (whole) add(waiting, weighted(from, at));
        });
      }
    },
    result() {
      if (segments < 2) {
        if (leftOut > 0) return notThere('two segments of finite numbers in both channels');
        return tooShort(firstCut.waiting() + (segments === 1 ? hop : 0), length + hop);
      }
      const scale = 1 / (segments * rate * squares);
      const oneSided = (powers: Float64Array) =>
        powers.map((power, k) => power * scale * (k === 0 || k === lines - 1 ? 1 : 2));
      return answer({
        ...settings,
        resolution: rate / length,
        coherence: one.map((power, k) => {
          const both = power * two[k]!;
          return both > 0 ? Math.min(1, (re[k]! ** 2 + im[k]! ** 2) / both) : 0;
        }),
        crossRe: oneSided(re),
        crossIm: oneSided(im),
        responseRe: re.map((value, k) => (one[k]! > 0 ? value / one[k]! : 0)),
        responseIm: im.map((value, k) => (one[k]! > 0 ? value / one[k]! : 0)),
        first: oneSided(one),
        second: oneSided(two),
        segments,
        effectiveAverages: effectiveAverages(settings, segments),
        noiseBandwidth,
      });
    },
  };
}

/**
 * Relative standard deviation of |H₁| on a line, which is also that of its phase in radians: √((1 − γ²)/(2·γ²·n)) with n
 * effective averages. Source: Bendat and Piersol, Random Data (from memory).
 */
export function responseDeviation(cross: CrossSpectrum, line: number): number {
  const coherence = cross.coherence[line]!;
  if (!(coherence > 0)) return Number.POSITIVE_INFINITY;
  return Math.sqrt((1 - coherence) / (2 * coherence * cross.effectiveAverages));
}
