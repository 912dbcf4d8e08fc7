import { type Answer, answer } from '../../quantity/index.ts';
import { coverageFactor } from '../../uncertainty/coverage.ts';
import { realFourierTransform } from '../fft.ts';
import { digitalBandPass, filtered } from './digital-filter.ts';
import { notThere, tooShort } from './gathering.ts';
import { leastSquares } from './least-squares.ts';
import type { Tap } from './taps.ts';

/** A ring-down x = A·e^(−αt)·cos(ω_d·t + φ) + C that was fitted to what follows a tap. */
export interface Decay {
  /** Natural frequency √(ω_d² + α²)/2π in hertz, with its standard error. */
  readonly frequency: number;
  readonly frequencyError: number;
  /** Damping ratio α/√(ω_d² + α²), with its standard error; 1/(2·damping) is the quality. */
  readonly damping: number;
  readonly dampingError: number;
  /** Damping ratio from the logarithmic decrement of the tops, beside it: unknown where fewer than four stand out. */
  readonly decrementDamping: Answer<number>;
  /** Share of the mean square that the fit explains, 1 for one mode alone. */
  readonly explained: number;
  /** Seconds of record that were fitted. */
  readonly duration: number;
}

/** Frequency and damping over several taps. */
export interface DecayOfTaps {
  readonly taps: number;
  readonly frequency: number;
  readonly damping: number;
  /** 95 % intervals of the means by Student's t. */
  readonly frequencyInterval: readonly [number, number];
  readonly dampingInterval: readonly [number, number];
}

/**
 * Resonance frequency and damping ratio of the strongest mode between two frequencies in hertz in what follows a tap. Begun
 * at the highest line, then x ≈ e^(−αt)·(A·cos ωt + B·sin ωt) + C fitted by least squares in ω and α (Gauss-Newton with
 * shrinking steps), from the top of the ring-down for as long as it stands out of the quiet.
 */
export function decayAfter(tap: Tap, rate: number, low: number, high: number): Answer<Decay> {
  const start = tap.onset;
  const ring = tap.samples.subarray(start);
  const band = [Math.max(low, rate * 1e-4), Math.min(high, rate * 0.49)] as const;
  if (!(band[1] > band[0])) return notThere('sampling rate above twice the band of the resonance');
  const line = highestLineBetween(ring, rate, band[0], band[1]);
  if (line === undefined) return notThere(`line between ${low} Hz and ${high} Hz`);
  // Other modes and the push of the hammer go; the filter itself rings for about a period only.
  const about = digitalBandPass(Math.max(line * 0.6, rate * 1e-4), Math.min(line * 1.5, rate * 0.49), 1, rate);
  const through = filtered(
    about,
    ring.map((x) => x - ring[ring.length - 1]!),
  );
  let top = 0;
  for (let n = 0; n < through.length; n++) if (Math.abs(through[n]!) > Math.abs(through[top]!)) top = n;
  // Three periods after the top the push is over and the filter has settled: what rings is the mode.
  const from = top + Math.round((3 * rate) / line);
  const floor = noiseOfEnd(through);
  let to = from;
  for (let n = from; n < through.length; n++) if (Math.abs(through[n]!) > 4 * floor) to = n + 1;
  const needed = Math.ceil((5 * rate) / line);
  if (to - from < needed) {
    return to === through.length
      ? tooShort(to - from, needed)
      : notThere('at least five periods that stand out of the quiet');
  }
  const fit = fittedDecay(through.subarray(from, to), rate, line);
  if (fit === undefined) return notThere('decaying sine to which the fit comes to rest');
  return answer({ ...fit, decrementDamping: decrement(through.subarray(from, to), rate, fit.frequency, floor) });
}

/** Means over taps with 95 % intervals, mean ± t·s/√n: at least three taps, since two tell nothing of their spread. */
export function decayOfTaps(decays: readonly Decay[]): Answer<DecayOfTaps> {
  if (decays.length < 3) return notThere(`at least three taps with a ring-down (it has ${decays.length})`);
  const [frequency, frequencyInterval] = meanWithin(decays.map((each) => each.frequency));
  const [damping, dampingInterval] = meanWithin(decays.map((each) => each.damping));
  return answer({ taps: decays.length, frequency, damping, frequencyInterval, dampingInterval });
}

function meanWithin(values: readonly number[]): readonly [number, readonly [number, number]] {
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
  const variance = values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (values.length - 1);
  const reach = coverageFactor(0.95, values.length - 1) * Math.sqrt(variance / values.length);
  return [mean, [mean - reach, mean + reach]];
}

function highestLineBetween(ring: Float64Array, rate: number, low: number, high: number): number | undefined {
  const length = 2 ** Math.max(8, Math.ceil(Math.log2(ring.length)) + 1);
  const padded = new Float64Array(length);
  const mean = ring.reduce((sum, x) => sum + x, 0) / ring.length;
  for (const [n, x] of ring.entries()) padded[n] = x - mean;
  const { re, im } = realFourierTransform(length)(padded);
  const power = (k: number) => re[k]! ** 2 + im[k]! ** 2;
  const from = Math.max(1, Math.ceil((low * length) / rate));
  const to = Math.min(length / 2 - 1, Math.floor((high * length) / rate));
  let best = -1;
  // A top, not the flank of something beside the band.
  for (let k = from; k <= to; k++) {
    if (power(k) >= power(k - 1) && power(k) >= power(k + 1) && (best < 0 || power(k) > power(best))) best = k;
  }
  return best < 0 || power(best) === 0 ? undefined : (best * rate) / length;
}

/** rms of the last tenth. */
function noiseOfEnd(samples: Float64Array): number {
  const end = samples.subarray(Math.floor(samples.length * 0.9));
  return Math.sqrt(end.reduce((sum, x) => sum + x * x, 0) / end.length);
}

function fittedDecay(ring: Float64Array, rate: number, line: number): Omit<Decay, 'decrementDamping'> | undefined {
  let turn = (2 * Math.PI * line) / rate;
  let loss = firstLoss(ring);
  let best = amplitudesFor(ring, turn, loss);
  if (best === undefined) return undefined;
  for (let pass = 0; pass < 80; pass++) {
    const step = stepFrom(ring, turn, loss, best.values);
    if (step === undefined) return undefined;
    let [share, moved] = [1, false];
    while (share > 1e-4) {
      const tried = amplitudesFor(ring, turn + share * step.turn, loss + share * step.loss);
      if (tried !== undefined && tried.residual <= best.residual) {
        best = tried;
        turn += share * step.turn;
        loss += share * step.loss;
        moved = true;
        break;
      }
      share /= 2;
    }
    const small = Math.abs(share * step.turn) + Math.abs(share * step.loss) < 1e-12;
    if (moved && !small) continue;
    if (!(loss > 0 && turn > 0 && turn < Math.PI)) return undefined;
    const whole = Math.hypot(turn, loss);
    const [deviationTurn, deviationLoss] = [step.turnError, step.lossError];
    const power = ring.reduce((sum, x) => sum + x * x, 0) / ring.length;
    return {
      frequency: (whole * rate) / (2 * Math.PI),
      frequencyError: (Math.hypot(turn * deviationTurn, loss * deviationLoss) / whole / (2 * Math.PI)) * rate,
      damping: loss / whole,
      dampingError: (turn * Math.hypot(turn * deviationLoss, loss * deviationTurn)) / whole ** 3,
      explained: 1 - best.residual ** 2 / power,
      duration: ring.length / rate,
    };
  }
  return undefined;
}

/** Half the logarithm of the energy of the first half over that of the second, per sample: a first guess of the loss. */
function firstLoss(ring: Float64Array): number {
  const half = Math.floor(ring.length / 2);
  const energy = (part: Float64Array) => part.reduce((sum, x) => sum + x * x, 0) + Number.MIN_VALUE;
  const ratio = energy(ring.subarray(0, half)) / energy(ring.subarray(half));
  return Math.max(0.1 / ring.length, Math.log(Math.max(1, ratio)) / 2 / half);
}

function amplitudesFor(ring: Float64Array, turn: number, loss: number) {
  return solve(ring, turn, loss, undefined)?.fit;
}

/** A step of ω and α in radians and nepers a sample, with standard errors, from the derivatives of the model. */
function stepFrom(ring: Float64Array, turn: number, loss: number, values: readonly number[]) {
  const solved = solve(ring, turn, loss, values);
  if (solved === undefined) return undefined;
  const { values: found, covariance } = solved.fit;
  const scale = ring.length;
  return {
    turn: found[3]! / scale,
    loss: found[4]! / scale,
    turnError: Math.sqrt(covariance[3]![3]!) / scale,
    lossError: Math.sqrt(covariance[4]![4]!) / scale,
  };
}

function solve(ring: Float64Array, turn: number, loss: number, values: readonly number[] | undefined) {
  const size = values === undefined ? 3 : 5;
  const normal = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const right = new Array<number>(size).fill(0);
  const basis = new Float64Array(size);
  const [a, b] = [values?.[0] ?? 0, values?.[1] ?? 0];
  let squares = 0;
  for (let n = 0; n < ring.length; n++) {
    const fade = Math.exp(-loss * n);
    const [c, s, x] = [fade * Math.cos(turn * n), fade * Math.sin(turn * n), ring[n]!];
    basis[0] = c;
    basis[1] = s;
    basis[2] = 1;
    if (values !== undefined) {
      const place = n / ring.length;
      basis[3] = place * (b * c - a * s);
      basis[4] = -place * (a * c + b * s);
    }
    squares += x * x;
    for (let i = 0; i < size; i++) {
      right[i]! += basis[i]! * x;
      for (let j = 0; j < size; j++) normal[i]![j]! += basis[i]! * basis[j]!;
    }
  }
  const fit = leastSquares(normal, right, squares, ring.length);
  return fit === undefined ? undefined : { fit };
}

/** Damping ratio from tops that follow each other by half periods: ln|top| falls by πζ/√(1 − ζ²) each. */
function decrement(ring: Float64Array, rate: number, frequency: number, floor: number): Answer<number> {
  const half = rate / frequency / 2;
  const [places, logs]: [number[], number[]] = [[], []];
  for (let k = 0; (k + 1) * half < ring.length; k++) {
    let top = 0;
    for (let n = Math.round(k * half); n < Math.round((k + 1) * half); n++) top = Math.max(top, Math.abs(ring[n]!));
    if (top < 5 * floor) break;
    places.push(k);
    logs.push(Math.log(top));
  }
  if (places.length < 4) return notThere('at least four tops that stand out of the quiet');
  const meanPlace = places.reduce((sum, x) => sum + x, 0) / places.length;
  const meanLog = logs.reduce((sum, x) => sum + x, 0) / logs.length;
  let [over, under] = [0, 0];
  for (const [index, place] of places.entries()) {
    over += (place - meanPlace) * (logs[index]! - meanLog);
    under += (place - meanPlace) ** 2;
  }
  const ratio = -over / under / Math.PI;
  return answer(ratio / Math.hypot(1, ratio));
}
