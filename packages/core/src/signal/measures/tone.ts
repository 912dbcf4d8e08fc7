import { type Answer, answer, unanswered } from '../../quantity/index.ts';
import { amplitudeSpectrum } from '../spectrum.ts';
import { windowCalled } from '../windows/kinds.ts';
import { type Gathering, notThere, tooShort } from './gathering.ts';
import { leastSquares } from './least-squares.ts';
import { rotation } from './rotation.ts';

/** A sine in a record, x = mean + amplitude·cos(2πft + phase) with t from its first sample, and how sure it is. */
export interface Tone {
  /** In hertz. */
  readonly frequency: number;
  /** Standard error of the frequency; zero where the frequency was given. */
  readonly frequencyError: number;
  /** Peak amplitude in the unit of the record. */
  readonly amplitude: number;
  readonly amplitudeError: number;
  /** Of the cosine at the first sample, in radians in (−π, π]. */
  readonly phase: number;
  readonly phaseError: number;
  readonly mean: number;
  readonly meanError: number;
  /** rms of what the sine and the mean leave. */
  readonly residual: number;
  readonly samples: number;
}

/**
 * The sine of a known frequency that fits best: x ≈ A·cos ωt + B·sin ωt + C by least squares, in one pass, with standard
 * errors for a residual that is white. Source: IEEE 1057, three-parameter fit (from memory).
 */
export function toneAt(frequency: number, rate: number): Gathering<Answer<Tone>> {
  const turning = rotation(frequency / rate);
  const sums = new Float64Array(9);
  let [samples, bad] = [0, 0];
  let shift = Number.NaN;
  let [cosines, sines] = [new Float64Array(0), new Float64Array(0)];
  return {
    take(block) {
      if (block.length > cosines.length)
        [cosines, sines] = [new Float64Array(block.length), new Float64Array(block.length)];
      turning.next(cosines.subarray(0, block.length), sines.subarray(0, block.length));
      let [sc, ss, scc, scs, sss, sx, sxc, sxs, sxx] = sums as unknown as number[] as Nine;
      for (let n = 0; n < block.length; n++) {
        if (block[n]! - block[n]! !== 0) {
          bad++;
          continue;
        }
        if (Number.isNaN(shift)) shift = block[n]!;
        const [x, c, s] = [block[n]! - shift, cosines[n]!, sines[n]!];
        sc += c;
        ss += s;
        scc += c * c;
        scs += c * s;
        sss += s * s;
        sx += x;
        sxc += x * c;
        sxs += x * s;
        sxx += x * x;
        samples++;
      }
      sums.set([sc, ss, scc, scs, sss, sx, sxc, sxs, sxx]);
    },
    result() {
      const lacking = unfit(frequency, rate, samples, bad);
      if (lacking !== undefined) return lacking;
      const [sc, ss, scc, scs, sss, sx, sxc, sxs, sxx] = sums as unknown as number[] as Nine;
      const normal = [
        [scc, scs, sc],
        [scs, sss, ss],
        [sc, ss, samples],
      ];
      const fit = leastSquares(normal, [sxc, sxs, sx], sxx, samples);
      if (fit === undefined) return notThere('sine of that frequency: its parts cannot be told apart');
      return answer(toneOf(fit.values, fit.covariance, fit.residual, { frequency, samples, shift }));
    },
  };
}

type Nine = [number, number, number, number, number, number, number, number, number];

/**
 * The sine whose frequency is not known: x ≈ A·cos ωt + B·sin ωt + C with ω fitted too, from a first guess in hertz, or
 * without one from the highest line of a spectrum. Source: IEEE 1057, four-parameter fit (from memory).
 */
export function toneNear(samples: Float64Array, rate: number, guess?: number): Answer<Tone> {
  const bad = samples.reduce((count, x) => count + (Number.isFinite(x) ? 0 : 1), 0);
  if (bad > 0) return notThere(`record of finite numbers only (${bad} are none)`);
  if (samples.length < 16) return tooShort(samples.length, 16);
  let turns = (guess ?? highestLine(samples, rate)) / rate;
  const middle = (samples.length - 1) / 2;
  const shift = samples.reduce((sum, x) => sum + x, 0) / samples.length;
  let [a, b] = [0, 0];
  for (let pass = 0; pass < 60; pass++) {
    if (!(turns > 0 && turns < 0.5)) return notThere('sine below half the sampling rate');
    const basis = new Float64Array(4);
    const normal = Array.from({ length: 4 }, () => new Float64Array(4));
    const right = new Float64Array(4);
    let squares = 0;
    const size = pass === 0 ? 3 : 4;
    for (let n = 0; n < samples.length; n++) {
      const t = n - middle;
      const angle = 2 * Math.PI * turns * t;
      const [c, s, x] = [Math.cos(angle), Math.sin(angle), samples[n]! - shift];
      basis[0] = c;
      basis[1] = s;
      basis[2] = 1;
      basis[3] = (t / middle) * (b * c - a * s);
      squares += x * x;
      for (let i = 0; i < size; i++) {
        right[i]! += basis[i]! * x;
        for (let j = 0; j < size; j++) normal[i]![j]! += basis[i]! * basis[j]!;
      }
    }
    const matrix = normal.slice(0, size).map((row) => [...row.slice(0, size)]);
    const fit = leastSquares(matrix, [...right.slice(0, size)], squares, samples.length);
    if (fit === undefined) return notThere('sine that can be told from its mean');
    [a, b] = [fit.values[0]!, fit.values[1]!];
    if (size === 3) continue;
    const change = fit.values[3]! / middle / (2 * Math.PI);
    // A step beyond the width of a line would leave the sine it set out from.
    const step = Math.max(-0.3 / samples.length, Math.min(0.3 / samples.length, change));
    turns += step;
    if (Math.abs(step) > 1e-13 + 1e-9 / samples.length) continue;
    const frequency = turns * rate;
    const atMiddle = toneOf(fit.values, fit.covariance, fit.residual, { frequency, samples: samples.length, shift });
    const frequencyError = (Math.sqrt(fit.covariance[3]![3]!) / middle / (2 * Math.PI)) * rate;
    const phase = wrapped(atMiddle.phase - 2 * Math.PI * turns * middle);
    // At the first sample the error of the frequency has turned the phase by the distance to the middle.
    const shared = (b * fit.covariance[0]![3]! - a * fit.covariance[1]![3]!) / (a * a + b * b);
    const variance = atMiddle.phaseError ** 2 + fit.covariance[3]![3]! - 2 * shared;
    const phaseError = Math.min(Math.PI, Math.sqrt(Math.max(0, variance)));
    return answer({ ...atMiddle, frequencyError, phase, phaseError });
  }
  return notThere('sine to which the fit comes to rest');
}

/** The phase of the second over the first in radians, in (−π, π], with its standard error: φ₂ − φ₁. */
export function phaseBetween(first: Tone, second: Tone): { readonly phase: number; readonly phaseError: number } {
  return {
    phase: wrapped(second.phase - first.phase),
    phaseError: Math.hypot(first.phaseError, second.phaseError),
  };
}

/** The angle in (−π, π] that differs by whole turns, in radians. */
export function wrapped(angle: number): number {
  const turn = 2 * Math.PI;
  const within = angle - turn * Math.round(angle / turn);
  return within <= -Math.PI ? within + turn : within;
}

function unfit(frequency: number, rate: number, samples: number, bad: number): Answer<never> | undefined {
  if (!(frequency > 0)) return unanswered([{ of: 'the record', what: 'frequency above zero' }]);
  if (!(frequency < rate / 2)) {
    return unanswered([
      { of: 'the record', what: `sampling rate of more than ${2 * frequency} Hz (it has ${rate} Hz)` },
    ]);
  }
  if (bad > samples) return notThere(`record of finite numbers (${bad} are none)`);
  const needed = Math.max(8, Math.ceil((2 * rate) / frequency));
  return samples < needed ? tooShort(samples, needed) : undefined;
}

function toneOf(
  values: readonly number[],
  covariance: readonly (readonly number[])[],
  residual: number,
  { frequency, samples, shift }: { readonly frequency: number; readonly samples: number; readonly shift: number },
): Tone {
  const [a, b, c] = values as readonly [number, number, number];
  const [va, vb, vab] = [covariance[0]![0]!, covariance[1]![1]!, covariance[0]![1]!];
  const amplitude = Math.hypot(a, b);
  const along = Math.sqrt(Math.max(0, a * a * va + b * b * vb + 2 * a * b * vab));
  const across = Math.sqrt(Math.max(0, b * b * va + a * a * vb - 2 * a * b * vab));
  return {
    frequency,
    frequencyError: 0,
    amplitude,
    amplitudeError: amplitude === 0 ? Math.sqrt(va) : along / amplitude,
    phase: amplitude === 0 ? 0 : Math.atan2(-b, a),
    phaseError: amplitude === 0 ? Math.PI : Math.min(Math.PI, across / (amplitude * amplitude)),
    mean: c + shift,
    meanError: Math.sqrt(covariance[2]![2]!),
    residual,
    samples,
  };
}

/** The frequency of the highest line but the lowest two, refined by a parabola through the logarithms beside it. */
function highestLine(samples: Float64Array, rate: number): number {
  const length = 2 ** Math.floor(Math.log2(samples.length));
  const mean = samples.reduce((sum, x) => sum + x, 0) / samples.length;
  const record = samples.subarray(0, length).map((x) => x - mean);
  const { amplitudes, resolution } = amplitudeSpectrum(record, rate, windowCalled('hann'));
  let top = 1;
  for (let k = 1; k < amplitudes.length - 1; k++) if (amplitudes[k]! > amplitudes[top]!) top = k;
  const [left, centre, right] = [amplitudes[top - 1]!, amplitudes[top]!, amplitudes[top + 1]!].map((x) =>
    Math.log(x + Number.MIN_VALUE),
  ) as [number, number, number];
  const bend = left - 2 * centre + right;
  return (top + (bend < 0 ? (0.5 * (left - right)) / bend : 0)) * resolution;
}
