import { type Answer, answer } from '../../quantity/index.ts';
import { type Gathering, notThere } from './gathering.ts';

export interface PulseSettings {
  /** Samples a second. */
  readonly rate: number;
  /** A pulse begins where the record crosses this, in its unit. */
  readonly threshold: number;
  /** How far it must have been on the other side before the next pulse can begin, in its unit. */
  readonly hysteresis: number;
  /** Which way it crosses: a notch under a probe falls, a reflecting tape rises. */
  readonly edge: 'rising' | 'falling';
}

/** The turns of a shaft, from a pulse per turn. */
export interface Turns {
  readonly settings: PulseSettings;
  /** When each pulse began, in seconds from the first sample, as found. */
  readonly found: Float64Array;
  /** When each turn begins: without the extra pulses, and with the missing ones put evenly between their neighbours. */
  readonly times: Float64Array;
  /** Where pulses are missing: after which time, and how many. */
  readonly missing: readonly { readonly after: number; readonly pulses: number }[];
  /** Pulses that came too soon to be a turn. */
  readonly extra: readonly number[];
  /** Turns a second, of all whole turns, and of the slowest and the fastest. */
  readonly meanSpeed: number;
  readonly slowest: number;
  readonly fastest: number;
}

/**
 * Where the threshold stands for a record between two values: in their middle, with a hysteresis of a fifth of the span,
 * both in the unit of the record. Common practice, no source.
 */
export function pulseThreshold(least: number, greatest: number): Pick<PulseSettings, 'threshold' | 'hysteresis'> {
  return { threshold: (least + greatest) / 2, hysteresis: (greatest - least) / 5 };
}

/**
 * The turns of a shaft: a pulse begins where the line between two samples crosses the threshold, and the next not before
 * the record was back by the hysteresis. A pulse sooner than 0.6 of the usual distance is extra, after 1.5 of it others
 * are missing; usual is the median of nine distances around. A mark that doubles every turn cannot be told from speed.
 */
export function turnPulses(settings: PulseSettings): Gathering<Answer<Turns>> {
  const { rate, hysteresis } = settings;
  const sign = settings.edge === 'rising' ? 1 : -1;
  const threshold = sign * settings.threshold;
  let times: Float64Array = new Float64Array(1024);
  let [count, seen] = [0, 0];
  let armed = false;
  let previous = Number.NaN;
  return {
    take(samples) {
      for (let n = 0; n < samples.length; n++) {
        const x = sign * samples[n]!;
        if (x < threshold - hysteresis) armed = true;
        else if (armed && x >= threshold) {
          armed = false;
          // Where it was already between the two, or no number, the place of the sample is all that is known.
          const back = x > previous ? (x - threshold) / (x - previous) : 0;
          if (count === times.length) times = doubled(times);
          times[count++] = (seen + n - Math.min(1, back)) / rate;
        }
        previous = x;
      }
      seen += samples.length;
    },
    result() {
      const found = times.slice(0, count);
      if (count < 3) return notThere(`at least three pulses across ${settings.threshold} (it has ${count})`);
      return answer({ settings, found, ...turnsOf(found) });
    },
  };
}

function turnsOf(found: Float64Array): Omit<Turns, 'settings' | 'found'> {
  const distances = found.subarray(1).map((time, k) => time - found[k]!);
  const times: number[] = [found[0]!];
  const missing: { after: number; pulses: number }[] = [];
  const extra: number[] = [];
  let [slowest, fastest] = [Number.POSITIVE_INFINITY, 0];
  for (let k = 1; k < found.length; k++) {
    const usual = medianAround(distances, k - 1);
    const last = times.at(-1)!;
    const distance = found[k]! - last;
    if (distance < 0.6 * usual) {
      extra.push(found[k]!);
      continue;
    }
    const turns = Math.max(1, Math.round(distance / usual));
    if (distance > 1.5 * usual) missing.push({ after: last, pulses: turns - 1 });
    const whole = distance > 1.5 * usual ? turns : 1;
    for (let turn = 1; turn <= whole; turn++) times.push(last + (distance * turn) / whole);
    slowest = Math.min(slowest, whole / distance);
    fastest = Math.max(fastest, whole / distance);
  }
  const meanSpeed = (times.length - 1) / (times.at(-1)! - times[0]!);
  return { times: Float64Array.from(times), missing, extra, meanSpeed, slowest, fastest };
}

function medianAround(distances: Float64Array, place: number): number {
  const from = Math.max(0, Math.min(place - 4, distances.length - 9));
  const near = distances.slice(from, from + 9).sort();
  return near[Math.floor(near.length / 2)]!;
}

/** Speed over time: turns a second at the middle of each turn, 1/(t_{k+1} − t_k) at (t_k + t_{k+1})/2. */
export function speedOverTime(turns: Turns): { readonly times: Float64Array; readonly speeds: Float64Array } {
  const { times } = turns;
  const next = times.subarray(1);
  return {
    times: next.map((time, k) => (time + times[k]!) / 2),
    speeds: next.map((time, k) => 1 / (time - times[k]!)),
  };
}

function doubled(times: Float64Array): Float64Array {
  const longer = new Float64Array(times.length * 2);
  longer.set(times);
  return longer;
}
