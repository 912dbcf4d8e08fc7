import { complexFourierTransform } from '../signal/fft.ts';
import type { AmplitudeSpectrum } from '../signal/spectrum.ts';
import { hann } from '../signal/windows/hann.ts';
import { coherentGain } from '../signal/windows/properties.ts';
import { windowWeights } from '../signal/windows/window.ts';

/** A line and the noise it stands in, both as rms in the unit of the record. */
export interface StandingLine {
  readonly found: number;
  readonly noise: number;
  readonly decibels: number;
}

/** Lines on either side a line may lie at, for slip and for a speed known to a line; and those its noise is read from. */
const reach = 2;
const apart = 6;
const neighbours = 36;

/**
 * The largest of the lines around a place, against its neighbours: noise lines have exponential squares, so that their
 * mean is their median over ln 2; the median lets other lines of the machine be.
 */
function standing(at: (offset: number) => number): StandingLine {
  let found = 0;
  for (let k = -reach; k <= reach; k++) found = Math.max(found, at(k));
  const squares: number[] = [];
  for (let k = apart; k < apart + neighbours; k++) {
    for (const each of [at(-k), at(k)]) if (each > 0) squares.push(each ** 2);
  }
  squares.sort((a, b) => a - b);
  const noise = Math.sqrt((squares[squares.length >> 1] ?? 0) / Math.LN2 / 2);
  return { found: found / Math.SQRT2, noise, decibels: 20 * Math.log10(found / Math.SQRT2 / noise) };
}

/** A line at one frequency; nothing where it lies too near the end of what the spectrum holds. */
export function steadyLine(spectrum: AmplitudeSpectrum, frequency: number, highest: number): StandingLine | undefined {
  const centre = Math.round(frequency / spectrum.resolution);
  const last = Math.min(spectrum.amplitudes.length - 1, highest / spectrum.resolution);
  if (!(frequency > 0) || centre <= reach || centre + apart + neighbours > last) return undefined;
  return standing((offset) => spectrum.amplitudes[centre + offset] ?? 0);
}

/**
 * A line whose frequency moves, followed by its own angle: x·e^(−j2π·cycles) puts it on line 0 however it moved, and what
 * does not move with it is spread among the neighbours. The number of samples is a power of two.
 */
export function followedLine(samples: Float64Array, cycles: (index: number) => number): StandingLine {
  const { length } = samples;
  const weights = windowWeights(hann, length, 'periodic');
  const scale = 2 / (length * coherentGain(weights));
  const [re, im] = [new Float64Array(length), new Float64Array(length)];
  for (let n = 0; n < length; n++) {
    const angle = -2 * Math.PI * cycles(n);
    const value = samples[n]! * weights[n]! * scale;
    re[n] = value * Math.cos(angle);
    im[n] = value * Math.sin(angle);
  }
  complexFourierTransform(length)(re, im);
  return standing((offset) => {
    const k = (offset + length) % length;
    return Math.hypot(re[k]!, im[k]!);
  });
}
