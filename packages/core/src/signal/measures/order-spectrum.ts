import { type Answer, answer, Broken } from '../../quantity/index.ts';
import type { WindowName } from '../windows/kinds.ts';
import { type Gathering, notThere } from './gathering.ts';
import { type PowerDensity, powerDensity } from './power-density.ts';
import type { Turns } from './turns.ts';

export interface OrderSettings {
  /** Samples a second of the record. */
  readonly rate: number;
  /** When each turn begins, from the once-per-turn channel that was sampled with the record. */
  readonly turns: Turns;
  /** Samples a turn after resampling. */
  readonly perTurn: number;
  /** Samples of a segment of the spectrum, a power of two: length/perTurn turns. */
  readonly length: number;
  readonly window: WindowName;
  readonly overlap: number;
}

export interface OrderSpectrum {
  /** Whose `rate` is samples a turn, and whose lines stand at orders of the shaft. */
  readonly spectrum: PowerDensity;
  /** Orders up to this one come through whole, at the slowest turn and at the fastest. */
  readonly highestOrder: number;
  readonly turns: number;
}

/**
 * Spectrum over orders: the record is resampled at `perTurn` even angles of each turn and its density taken, in the square
 * of the unit per order. The second pass over a record whose turns are known.
 */
export function orderSpectrum(settings: OrderSettings): Gathering<Answer<OrderSpectrum>> {
  const { rate, turns, perTurn, length, window, overlap } = settings;
  const sampler = angleSampler(rate, turns.times, perTurn);
  const density = powerDensity({ rate: perTurn, length, window, overlap, detrend: 'mean' });
  return {
    take: (samples) => density.take(sampler.through(samples)),
    result() {
      const spectrum = density.result();
      if (!spectrum.known) {
        const needed = Math.ceil(length / perTurn);
        return notThere(`at least ${needed} whole turns with samples beside them (it has ${turns.times.length - 1})`);
      }
      return answer({
        spectrum: spectrum.value,
        highestOrder: 0.42 * Math.min(perTurn, rate / turns.fastest),
        turns: Math.floor(sampler.given() / perTurn),
      });
    },
  };
}

/** Zero crossings of the kernel on each side, and its points between two of them. */
const reach = 16;
const fineness = 512;

/** Gives the samples at even angles, as far as the samples around them have come. */
export interface AngleSampler {
  through(samples: Float64Array): Float64Array;
  given(): number;
}

/**
 * Resamples to even angles: the time of an angle by a cubic between the beginnings of turns whose slopes are those of the
 * neighbours, the value there by a Kaiser-windowed sinc of 32 crossings whose corner is the lower of half the sampling
 * rate and half of `perTurn` samples a turn. Exact within 0.01 % below 0.42 of that rate.
 */
export function angleSampler(rate: number, times: Float64Array, perTurn: number): AngleSampler {
  if (!(Number.isInteger(perTurn) && perTurn >= 2))
    throw new Broken('samples a turn are a whole number from 2', { perTurn });
  let held = new Float64Array(4096);
  let [begin, filled] = [0, 0];
  let [turn, part, given] = [0, 0, 0];

  const ready = (end: number): Float64Array => {
    const out: number[] = [];
    while (turn + 1 < times.length) {
      const { time, slope } = timeOf(times, turn, part / perTurn);
      // Fewer samples a turn than the record has: the kernel becomes as much wider.
      const narrower = Math.min(1, perTurn / (slope * rate));
      const place = time * rate;
      const width = reach / narrower;
      if (place + width >= end) break;
      // Angles before there are samples on both sides are passed over.
      if (place - width >= 0) out.push(valueAt(held, begin, place, narrower));
      if (++part === perTurn) {
        part = 0;
        turn++;
      }
    }
    return Float64Array.from(out);
  };

  return {
    through(samples) {
      if (filled + samples.length > held.length) {
        const longer = new Float64Array(2 * (filled + samples.length));
        longer.set(held.subarray(0, filled));
        held = longer;
      }
      held.set(samples, filled);
      filled += samples.length;
      const out = ready(begin + filled);
      given += out.length;
      const { time, slope } = timeOf(times, Math.min(turn, times.length - 2), part / perTurn);
      const first = Math.floor(time * rate - reach / Math.min(1, perTurn / (slope * rate))) - 2;
      const drop = Math.max(0, Math.min(filled, (turn + 1 < times.length ? first : begin + filled) - begin));
      held.copyWithin(0, drop, filled);
      filled -= drop;
      begin += drop;
      return out;
    },
    given: () => given,
  };
}

/** The time of a share of a turn, and its slope in seconds a turn: the cubic with central differences at both ends. */
function timeOf(times: Float64Array, turn: number, share: number): { readonly time: number; readonly slope: number } {
  const [t0, t1] = [times[turn]!, times[turn + 1]!];
  const s0 = turn > 0 ? (t1 - times[turn - 1]!) / 2 : t1 - t0;
  const s1 = turn + 2 < times.length ? (times[turn + 2]! - t0) / 2 : t1 - t0;
  const d = t1 - t0;
  const [p, q] = [3 * d - 2 * s0 - s1, s0 + s1 - 2 * d];
  return { time: t0 + share * (s0 + share * (p + share * q)), slope: s0 + share * (2 * p + 3 * share * q) };
}

function valueAt(held: Float64Array, begin: number, place: number, narrower: number): number {
  const width = reach / narrower;
  const from = Math.ceil(place - width);
  const to = Math.floor(place + width);
  let value = 0;
  for (let n = from; n <= to; n++) {
    const at = Math.abs(n - place) * narrower * fineness;
    const k = Math.floor(at);
    value += held[n - begin]! * (kernel[k]! + (at - k) * (kernel[k + 1]! - kernel[k]!));
  }
  return value * narrower;
}

/** sinc(u)·I₀(β√(1 − (u/16)²))/I₀(β), β = 8, at steps of 1/512 of u. */
const kernel = Float64Array.from({ length: reach * fineness + 2 }, (_, k) => {
  const u = k / fineness;
  if (u >= reach) return 0;
  const sinc = u === 0 ? 1 : Math.sin(Math.PI * u) / (Math.PI * u);
  return (sinc * besselI0(8 * Math.sqrt(1 - (u / reach) ** 2))) / besselI0(8);
});

function besselI0(x: number): number {
  let [term, total] = [1, 1];
  for (let k = 1; term > total * 1e-17; k++) {
    term *= (x * x) / (4 * k * k);
    total += term;
  }
  return total;
}
