import { type Answer, answer, Broken } from '../../quantity/index.ts';
import { isPowerOfTwo, realFourierTransform } from '../fft.ts';
import { type WindowName, windowCalled } from '../windows/kinds.ts';
import { coherentGain, noiseBandwidth, overlapCorrelation } from '../windows/properties.ts';
import { windowWeights } from '../windows/window.ts';
import { type Gathering, notThere, tooShort } from './gathering.ts';

/** How a record is cut and weighted before its density is taken; all of it is part of the result. */
export interface DensitySettings {
  /** Samples a second. */
  readonly rate: number;
  /** Samples of a segment, a power of two. */
  readonly length: number;
  readonly window: WindowName;
  /** The share of a segment that the next one has too: 0.5 for half. */
  readonly overlap: number;
  /** Whether the mean of each segment is taken off it. */
  readonly detrend: 'none' | 'mean';
}

/** A one-sided power spectral density, averaged over segments. */
export interface PowerDensity extends DensitySettings {
  /** Distance of the lines in hertz: rate/length. */
  readonly resolution: number;
  /** Square of the unit of the record per hertz; line k stands at k · resolution. */
  readonly density: Float64Array;
  readonly segments: number;
  /** Segments with a sample that is no finite number; they are left out. */
  readonly segmentsLeftOut: number;
  /** Samples behind the last whole segment, which are in no segment. */
  readonly samplesLeftOver: number;
  /** How many segments that share nothing would give as steady a density. */
  readonly effectiveAverages: number;
  /** Equivalent noise bandwidth of the window in hertz. */
  readonly noiseBandwidth: number;
}

/**
 * Power spectral density by Welch's method: G_k = 2·mean|Σ w_n·x_n·e^(−j2πkn/N)|²/(f_s·Σw²), without the 2 for the first
 * and the last line. Source: Welch 1967 (from memory).
 */
export function powerDensity(settings: DensitySettings): Gathering<Answer<PowerDensity>> {
  const { rate, length, detrend } = settings;
  const prepared = segmentsOf(settings);
  const { weights, hop } = prepared;
  const transform = realFourierTransform(length);
  const total = new Float64Array(length / 2 + 1);
  const weighted = new Float64Array(length);
  const cut = segmentCutter(length, hop);
  let [segments, leftOut] = [0, 0];

  const addSegment = (from: Float64Array, start: number) => {
    let sum = 0;
    for (let n = 0; n < length; n++) sum += from[start + n]!;
    if (sum - sum !== 0) {
      leftOut++;
      return;
    }
    const mean = detrend === 'mean' ? sum / length : 0;
    for (let n = 0; n < length; n++) weighted[n] = (from[start + n]! - mean) * weights[n]!;
    const { re, im } = transform(weighted);
    for (let k = 0; k < total.length; k++) total[k]! += re[k]! * re[k]! + im[k]! * im[k]!;
    segments++;
  };

  return {
    take: (samples) => cut.take(samples, addSegment),
    result() {
      if (segments === 0 && leftOut > 0) return notThere('segment without samples that are no finite numbers');
      if (segments === 0) return tooShort(cut.waiting(), length);
      const scale = 1 / (segments * rate * prepared.squares);
      const last = total.length - 1;
      return answer({
        ...settings,
        resolution: rate / length,
        density: total.map((power, k) => power * scale * (k === 0 || k === last ? 1 : 2)),
        segments,
        segmentsLeftOut: leftOut,
        samplesLeftOver: cut.leftOver(),
        effectiveAverages: effectiveAverages(settings, segments),
        noiseBandwidth: prepared.noiseBandwidth,
      });
    },
  };
}

/** What of the settings is worked out once: weights, step from segment to segment, Σw², noise bandwidth in hertz. */
export function segmentsOf({ rate, length, window, overlap }: DensitySettings): {
  readonly weights: Float64Array;
  readonly hop: number;
  readonly squares: number;
  readonly noiseBandwidth: number;
} {
  if (!(rate > 0 && isPowerOfTwo(length) && length >= 4 && overlap >= 0 && overlap < 1)) {
    throw new Broken('a density has a positive rate, segments of 2ⁿ samples from 4 and an overlap from 0 to below 1', {
      rate,
      length,
      overlap,
    });
  }
  const weights = windowWeights(windowCalled(window), length, 'periodic');
  const squares = weights.reduce((sum, each) => sum + each * each, 0);
  return { weights, hop: hopOf(length, overlap), squares, noiseBandwidth: (noiseBandwidth(weights) * rate) / length };
}

function hopOf(length: number, overlap: number): number {
  return Math.max(1, length - Math.floor(length * overlap));
}

/** Cuts blocks into overlapping segments, whatever the lengths of the blocks. */
export interface SegmentCutter {
  take(samples: Float64Array, segment: (from: Float64Array, start: number) => void): void;
  /** Samples that wait for their segment to be whole. */
  waiting(): number;
  /** Samples that are in no segment so far. */
  leftOver(): number;
}

/** A cutter of segments of `length` samples that begin `hop` samples apart. */
export function segmentCutter(length: number, hop: number): SegmentCutter {
  const kept = new Float64Array(4 * length);
  let filled = 0;
  let segments = 0;
  return {
    take(samples, segment) {
      for (let read = 0; read < samples.length; ) {
        const room = Math.min(kept.length - filled, samples.length - read);
        kept.set(samples.subarray(read, read + room), filled);
        filled += room;
        read += room;
        let start = 0;
        for (; start + length <= filled; start += hop) {
          segment(kept, start);
          segments++;
        }
        kept.copyWithin(0, start, filled);
        filled = Math.max(0, filled - start);
      }
    },
    waiting: () => filled,
    leftOver: () => (segments === 0 ? filled : Math.max(0, filled - (length - hop))),
  };
}

/**
 * Averages that count as independent: K/(1 + 2·Σ(1 − j/K)·ρ_j²) for K segments, ρ_j the correlation of the windows of
 * segments j apart. Source: Welch 1967 (from memory), for noise that is flat over a line.
 */
export function effectiveAverages({ length, window, overlap }: DensitySettings, segments: number): number {
  const weights = windowWeights(windowCalled(window), length, 'periodic');
  const hop = hopOf(length, overlap);
  let shared = 0;
  for (let j = 1; j < segments && j * hop < length; j++) {
    shared += (1 - j / segments) * overlapCorrelation(weights, 1 - (j * hop) / length) ** 2;
  }
  return segments / (1 + 2 * shared);
}

/**
 * By how much the variance of a sum over neighbouring lines exceeds that of as many lines that share nothing, beside the
 * effective averages: a record of T seconds holds B·T independent values in a band B, however it is cut, where lines
 * times averages would count more of them. Derived here: length/(hop) of the segments over what the averages count of it.
 */
export function sharedByLines(settings: DensitySettings, segments: number): number {
  const { length, overlap } = settings;
  return (effectiveAverages(settings, segments) * length) / (segments * hopOf(length, overlap));
}

/**
 * The mean square between two frequencies in hertz, in the square of the unit: each line spreads its power G_k·df evenly over
 * its cell of df, at the ends over half a cell, and an edge cuts a cell where it stands. The whole is the mean square.
 */
export function bandPower(density: PowerDensity, low: number, high: number): number {
  let power = 0;
  eachCell(density, low, high, (share) => {
    power += share;
  });
  return power;
}

/** The rms between two frequencies in hertz: √ of the mean square there, in the unit of the record. */
export function densityRms(density: PowerDensity, low: number, high: number): number {
  return Math.sqrt(bandPower(density, low, high));
}

/**
 * Relative standard deviation of the rms of noise in a band: 1/(2·√n), n = K_e·(ΣG)²/(B·ΣG²) with the effective
 * averages K_e, the noise bandwidth B in lines and the sums over the band. It needs at least one line in the band.
 */
export function densityRmsDeviation(density: PowerDensity, low: number, high: number): number {
  let [sum, squares] = [0, 0];
  eachCell(density, low, high, (share) => {
    sum += share;
    squares += share * share;
  });
  if (squares === 0) return 0;
  const lines = (sum * sum) / squares / (density.noiseBandwidth / density.resolution);
  return 1 / (2 * Math.sqrt(density.effectiveAverages * Math.max(1, lines)));
}

function eachCell(density: PowerDensity, low: number, high: number, cell: (power: number) => void): void {
  const { resolution } = density;
  const last = density.density.length - 1;
  const from = Math.max(0, Math.floor(low / resolution));
  const to = Math.min(last, Math.ceil(high / resolution));
  for (let k = from; k <= to; k++) {
    const begin = Math.max(0, (k - 0.5) * resolution);
    const end = Math.min(last, k + 0.5) * resolution;
    const inside = Math.min(end, high) - Math.max(begin, low);
    if (inside > 0) cell((density.density[k]! * resolution * inside) / (end - begin));
  }
}

/**
 * Peak amplitude of a sine that stands on a line, for each line, in the unit of the record: √(2·G_k·B) with the noise
 * bandwidth B in hertz, √(G_k·B) for the first and the last line. Between two lines low by the scalloping loss.
 */
export function amplitudesOf({ density, noiseBandwidth }: PowerDensity): Float64Array {
  const last = density.length - 1;
  return density.map((value, k) => Math.sqrt((k === 0 || k === last ? 1 : 2) * value * noiseBandwidth));
}

/** Coherent gain of the window of a density: the mean of its weights, by which amplitudes were divided. */
export function densityCoherentGain({ window, length }: PowerDensity): number {
  return coherentGain(windowWeights(windowCalled(window), length, 'periodic'));
}
