import { type Answer, answer, Broken } from '../../quantity/index.ts';
import type { WindowName } from '../windows/kinds.ts';
import { digitalLowPass, runningFilter } from './digital-filter.ts';
import { type Gathering, tooShort } from './gathering.ts';
import { type Moments, moments } from './moments.ts';
import { type PowerDensity, powerDensity } from './power-density.ts';
import { rotation } from './rotation.ts';

export interface EnvelopeSettings {
  /** Samples a second. */
  readonly rate: number;
  /** The band whose envelope is taken, in hertz: its gain is −3.01 dB at both edges. */
  readonly low: number;
  readonly high: number;
  /** Order 1..8 of each slope. */
  readonly order: number;
  /** Of the spectrum: samples of a segment at the envelope's own rate, a power of two. */
  readonly length: number;
  readonly window: WindowName;
  readonly overlap: number;
}

/** The envelope of a band, and its spectrum. */
export interface EnvelopeSpectrum {
  readonly settings: EnvelopeSettings;
  /** How it was taken, in words. */
  readonly method: string;
  /** Samples a second of the envelope: the sampling rate divided by a whole number. */
  readonly envelopeRate: number;
  /** Samples of the record at its begin that are left out, because the filter settles. */
  readonly settling: number;
  readonly moments: Moments;
  /** Of the envelope less its mean; its highest useful frequency is the width of the band. */
  readonly spectrum: PowerDensity;
}

export const envelopeMethod =
  'complex demodulation: the record times e^(−j2πf₀t) with f₀ the middle of the band, a Butterworth low-pass of half ' +
  'its width on real and imaginary part, twice the magnitude';

/** A running demodulator: gives each sample of the envelope that is kept, at the rate divided by `every`. */
export interface EnvelopeDetector {
  readonly every: number;
  readonly settling: number;
  through(samples: Float64Array): Float64Array;
}

/**
 * Envelope of a band, a(t) = 2·|LP{x·e^(−j2πf₀t)}|, in the unit of the record: the magnitude of the analytic signal of the
 * band. Every `every`-th sample is kept, at least four times the width of the band a second.
 */
export function envelopeDetector(rate: number, low: number, high: number, order: number): EnvelopeDetector {
  if (!(low > 0 && high > low && high < rate / 2)) {
    throw new Broken('the band of an envelope lies between zero and half the sampling rate', { rate, low, high });
  }
  const halfWidth = (high - low) / 2;
  const sections = digitalLowPass(halfWidth, order, rate);
  const [real, imaginary] = [runningFilter(sections, 'at-rest'), runningFilter(sections, 'at-rest')];
  const turning = rotation((low + high) / 2 / rate);
  const every = Math.max(1, Math.floor(rate / (8 * halfWidth)));
  const settling = Math.ceil((4 * rate) / halfWidth);
  let seen = 0;
  return {
    every,
    settling,
    through(samples) {
      const re = new Float64Array(samples.length);
      const im = new Float64Array(samples.length);
      turning.next(re, im);
      for (let n = 0; n < samples.length; n++) {
        re[n]! *= samples[n]!;
        im[n]! *= -samples[n]!;
      }
      real.through(re);
      imaginary.through(im);
      let next = seen < settling ? settling - seen : (every - ((seen - settling) % every)) % every;
      const kept = new Float64Array(Math.max(0, Math.ceil((samples.length - next) / every)));
      for (let k = 0; k < kept.length; k++, next += every) {
        kept[k] = 2 * Math.sqrt(re[next]! * re[next]! + im[next]! * im[next]!);
      }
      seen += samples.length;
      return kept;
    },
  };
}

/** The spectrum of the envelope of a band, as a density with the settings that it was taken with. */
export function envelopeSpectrum(settings: EnvelopeSettings): Gathering<Answer<EnvelopeSpectrum>> {
  const { rate, low, high, order, length, window, overlap } = settings;
  const detector = envelopeDetector(rate, low, high, order);
  const envelopeRate = rate / detector.every;
  const density = powerDensity({ rate: envelopeRate, length, window, overlap, detrend: 'mean' });
  const values = moments();
  let samples = 0;
  return {
    take(block) {
      samples += block.length;
      const envelope = detector.through(block);
      density.take(envelope);
      values.take(envelope);
    },
    result() {
      const spectrum = density.result();
      const moments = values.result();
      if (!spectrum.known || !moments.known) {
        const needed = detector.settling + length * detector.every;
        return samples < needed ? tooShort(samples, needed) : spectrum.known ? (moments as never) : spectrum;
      }
      return answer({
        settings,
        method: envelopeMethod,
        envelopeRate,
        settling: detector.settling,
        moments: moments.value,
        spectrum: spectrum.value,
      });
    },
  };
}
