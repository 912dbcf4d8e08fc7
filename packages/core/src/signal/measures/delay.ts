import { type Answer, answer } from '../../quantity/index.ts';
import { complexFourierTransform } from '../fft.ts';
import { type CrossSpectrum, responseDeviation } from './coherence.ts';
import { notThere } from './gathering.ts';

/** How much later the second channel is, in seconds. */
export interface Delay {
  readonly delay: number;
  /** Standard deviation of it. */
  readonly deviation: number;
  /** 95 % interval for Gaussian noise. */
  readonly interval: readonly [number, number];
  /** Phase that the channels differ by where the straight line meets zero frequency, in radians: π where one is reversed. */
  readonly phaseAtZero: number;
  /** The largest correlation, with its sign, from −1 to 1, of the band; negative where one channel is reversed. */
  readonly correlation: number;
  /** Largest correlation elsewhere over the largest: near one, the delay may be wrong by whole periods. */
  readonly rival: number;
}

/**
 * Delay between two channels from the slope of their phase between two frequencies in hertz: φ(f) = φ₀ − 2πf·τ by least
 * squares, each line weighted by γ²/(1 − γ²), begun at the peak of the correlation so that whole turns are known.
 */
export function delayBetween(cross: CrossSpectrum, low: number, high: number): Answer<Delay> {
  const { resolution, length, rate } = cross;
  const from = Math.max(1, Math.ceil(low / resolution));
  const to = Math.min(cross.crossRe.length - 2, Math.floor(high / resolution));
  if (to - from < 4) return notThere(`at least five lines between ${low} Hz and ${high} Hz`);
  const peak = correlationPeak(cross, from, to);
  if (peak === undefined) return notThere(`anything in common between ${low} Hz and ${high} Hz`);
  const begun = peak.lag / rate;
  // What is left of the phase after that delay lies around one angle, which is taken off first.
  let [re, im] = [0, 0];
  const turned = (k: number) => {
    const angle = 2 * Math.PI * k * resolution * begun;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    return [cross.crossRe[k]! * c - cross.crossIm[k]! * s, cross.crossRe[k]! * s + cross.crossIm[k]! * c] as const;
  };
  const weightOf = (k: number) => 1 / Math.max(1e-9, responseDeviation(cross, k)) ** 2;
  for (let k = from; k <= to; k++) {
    const [r, i] = turned(k);
    const size = Math.hypot(r, i);
    if (size === 0) continue;
    re += (weightOf(k) * r) / size;
    im += (weightOf(k) * i) / size;
  }
  const around = Math.atan2(im, re);
  let [w, wf, wp, wff, wfp] = [0, 0, 0, 0, 0];
  const middle = ((from + to) / 2) * resolution;
  for (let k = from; k <= to; k++) {
    const [r, i] = turned(k);
    if (r === 0 && i === 0) continue;
    const rest = Math.atan2(i * Math.cos(around) - r * Math.sin(around), r * Math.cos(around) + i * Math.sin(around));
    const [weight, f] = [weightOf(k), k * resolution - middle];
    w += weight;
    wf += weight * f;
    wp += weight * rest;
    wff += weight * f * f;
    wfp += weight * f * rest;
  }
  const spread = wff - (wf * wf) / w;
  if (!(spread > 0)) return notThere(`anything in common between ${low} Hz and ${high} Hz`);
  const slope = (wfp - (wf * wp) / w) / spread;
  const delay = begun - slope / (2 * Math.PI);
  // Neighbouring lines share noise through the window: fewer of them count, by its noise bandwidth.
  const deviation = Math.sqrt(cross.noiseBandwidth / resolution / spread) / (2 * Math.PI);
  const atMiddle = around + (wp - slope * wf) / w;
  const atZero = atMiddle - slope * middle;
  if (Math.abs(delay) > length / rate / 4) return notThere(`segments of at least four times the delay of ${delay} s`);
  return answer({
    delay,
    deviation,
    interval: [delay - 1.96 * deviation, delay + 1.96 * deviation],
    phaseAtZero: atZero - 2 * Math.PI * Math.round(atZero / (2 * Math.PI)),
    correlation: peak.correlation,
    rival: peak.rival,
  });
}

/** The largest correlation within a quarter of a segment, at a lag in samples refined by a parabola. */
function correlationPeak(cross: CrossSpectrum, from: number, to: number) {
  const { length } = cross;
  const [re, im] = [new Float64Array(length), new Float64Array(length)];
  let [one, two] = [0, 0];
  for (let k = from; k <= to; k++) {
    re[k] = cross.crossRe[k]!;
    im[k] = cross.crossIm[k]!;
    one += cross.first[k]!;
    two += cross.second[k]!;
  }
  const scale = Math.sqrt(one * two);
  if (!(scale > 0)) return undefined;
  // Inverse: parts exchanged. The real part is the correlation, the magnitude its envelope.
  complexFourierTransform(length)(im, re);
  const at = (lag: number) => re[(lag + length) % length]! / scale;
  const limit = length / 4;
  let best = 0;
  for (let lag = -limit; lag <= limit; lag++) if (Math.abs(at(lag)) > Math.abs(at(best))) best = lag;
  const sign = Math.sign(at(best));
  // The rival is the highest top beyond the valley on either side of the peak.
  let [left, right] = [best, best];
  while (left > -limit && sign * at(left - 1) < sign * at(left)) left--;
  while (right < limit && sign * at(right + 1) < sign * at(right)) right++;
  let rival = 0;
  for (let lag = -limit; lag <= limit; lag++) if (lag < left || lag > right) rival = Math.max(rival, sign * at(lag));
  const [before, top, after] = [at(best - 1), at(best), at(best + 1)];
  const bend = before - 2 * top + after;
  const off = bend === 0 ? 0 : (0.5 * (before - after)) / bend;
  return { lag: best + Math.max(-0.5, Math.min(0.5, off)), correlation: top, rival: rival / Math.abs(top) };
}
