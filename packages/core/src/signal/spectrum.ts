import { Broken } from '../quantity/index.ts';
import { realFourierTransform } from './fft.ts';
import { coherentGain, noiseBandwidth } from './windows/properties.ts';
import { type WindowDefinition, type WindowKind, windowWeights } from './windows/window.ts';

/** The lines of a record, corrected for its window. */
export interface AmplitudeSpectrum {
  /** Distance of the lines in hertz; line k stands at k times this. */
  readonly resolution: number;
  /** Peak amplitude of a sine that stands on the line, in the unit of the record; line 0 is the mean. */
  readonly amplitudes: Float64Array;
  /** Equivalent noise bandwidth of the window in lines: the sum of squares of neighbouring lines is too large by it. */
  readonly noiseBandwidth: number;
  readonly window: string;
}

/**
 * Amplitude spectrum of a record of N samples, N a power of two: A_k = 2·|Σ w_n·x_n·e^(−j2πkn/N)| / (N·CG), without
 * the 2 for the first and the last line. Correct for a sine on a line; between two lines low by the scalloping loss.
 */
export function amplitudeSpectrum(
  record: ArrayLike<number>,
  samplingRate: number,
  window: WindowKind,
  definition: WindowDefinition = 'periodic',
): AmplitudeSpectrum {
  if (!(samplingRate > 0)) throw new Broken('a sampling rate is positive', { samplingRate });
  const weights = windowWeights(window, record.length, definition);
  const weighted = weights.map((weight, n) => weight * record[n]!);
  const { re, im } = realFourierTransform(record.length)(weighted);
  const scale = 1 / (record.length * coherentGain(weights));
  const last = re.length - 1;
  const amplitudes = re.map((value, k) => Math.hypot(value, im[k]!) * scale * (k === 0 || k === last ? 1 : 2));
  return {
    resolution: samplingRate / record.length,
    amplitudes,
    noiseBandwidth: noiseBandwidth(weights),
    window: window.kind,
  };
}

/**
 * The r.m.s. of a band, both edges included, in the unit of the record: √(Σ A_k²/2 / B), B the noise bandwidth in
 * lines; line 0 and the last line enter with A_k². Correct for noise, and for sines whose lines lie wholly inside.
 */
export function bandRms(spectrum: AmplitudeSpectrum, low: number, high: number): number {
  const { amplitudes, resolution } = spectrum;
  const last = amplitudes.length - 1;
  const from = Math.max(0, Math.ceil(low / resolution - 1e-9));
  const to = Math.min(last, Math.floor(high / resolution + 1e-9));
  let power = 0;
  for (let k = from; k <= to; k++) power += (k === 0 || k === last ? 1 : 0.5) * amplitudes[k]! ** 2;
  return Math.sqrt(power / spectrum.noiseBandwidth);
}
