import { realFourierTransform } from '../fft.ts';

/** Mean of the weights: what the amplitude of a line has to be divided by. CG = Σ w_n / N. */
export function coherentGain(weights: Float64Array): number {
  return sumOf(weights) / weights.length;
}

/**
 * Equivalent noise bandwidth in lines: the width of a rectangular filter that passes as much white noise.
 * B = N · Σ w_n² / (Σ w_n)². Source: Harris 1978.
 */
export function noiseBandwidth(weights: Float64Array): number {
  const total = sumOf(weights);
  return (weights.length * sumOfProducts(weights, weights, 0)) / (total * total);
}

/** Gain at a place `lines` away from the line, relative to the line itself: |Σ w_n·e^(−j2πn·lines/N)| / Σ w_n. */
export function relativeGain(weights: Float64Array, lines: number): number {
  let [re, im] = [0, 0];
  for (let n = 0; n < weights.length; n++) {
    const angle = (2 * Math.PI * n * lines) / weights.length;
    re += weights[n]! * Math.cos(angle);
    im -= weights[n]! * Math.sin(angle);
  }
  return Math.hypot(re, im) / sumOf(weights);
}

/** How much a sine half way between two lines is read too low, in decibels. Source: Harris 1978. */
export function scallopingLoss(weights: Float64Array): number {
  return -20 * Math.log10(relativeGain(weights, 0.5));
}

/** Correlation of the noise in two records that share the fraction `overlap` of their samples. Source: Harris 1978. */
export function overlapCorrelation(weights: Float64Array, overlap: number): number {
  const shift = Math.round((1 - overlap) * weights.length);
  return sumOfProducts(weights, weights, shift) / sumOfProducts(weights, weights, 0);
}

/**
 * The largest amount by which a sine anywhere between two lines is read too low or too high at the nearer one, in
 * decibels. For most windows it is the scalloping loss; a flat-top also reads too high in places.
 */
export function largestDeviation(weights: Float64Array): number {
  const deviation = (lines: number) => Math.abs(20 * Math.log10(relativeGain(weights, lines)));
  const steps = 32;
  let highest = 0;
  for (let step = 1; step <= steps; step++) highest = Math.max(highest, deviation(step / (2 * steps)));
  for (let step = 1; step < steps; step++) {
    const [low, high] = [(step - 1) / (2 * steps), (step + 1) / (2 * steps)];
    if (deviation(step / (2 * steps)) > highest * 0.9) highest = Math.max(highest, top(deviation, low, high));
  }
  return highest;
}

/**
 * The highest side lobe, in decibels relative to the main lobe. The lobes are found on a spectrum 16 times finer than
 * the lines, and the top of each of the highest is then searched for: beside a broad main lobe the first may be narrow.
 */
export function highestSideLobe(weights: Float64Array): number {
  const finer = 2 ** Math.ceil(Math.log2(weights.length * 16));
  const padded = new Float64Array(finer);
  padded.set(weights);
  const { re, im } = realFourierTransform(finer)(padded);
  const size = re.map((value, k) => value * value + im[k]! * im[k]!);
  let place = Math.floor(finer / weights.length / 2);
  while (place + 1 < size.length && !(size[place]! < size[0]! * 0.03 && size[place + 1]! > size[place]!)) place++;
  const tops: number[] = [];
  for (place++; place < size.length; place++) {
    if (size[place]! >= size[place - 1]! && !(size[place + 1]! > size[place]!)) tops.push(place);
  }
  tops.sort((a, b) => size[b]! - size[a]!);
  const gain = (lines: number) => relativeGain(weights, lines);
  const step = weights.length / finer;
  const heights = tops.slice(0, 6).map((lobe) => top(gain, (lobe - 1) * step, (lobe + 1) * step));
  return 20 * Math.log10(Math.max(...heights));
}

/** The top of a function that rises once and falls once between two places, by the golden section. */
function top(height: (place: number) => number, from: number, to: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [left, right] = [high - golden * (high - low), low + golden * (high - low)];
  let [leftHeight, rightHeight] = [height(left), height(right)];
  for (let step = 0; step < 30; step++) {
    if (leftHeight > rightHeight) {
      [high, right, rightHeight] = [right, left, leftHeight];
      left = high - golden * (high - low);
      leftHeight = height(left);
    } else {
      [low, left, leftHeight] = [left, right, rightHeight];
      right = low + golden * (high - low);
      rightHeight = height(right);
    }
  }
  return Math.max(leftHeight, rightHeight);
}

function sumOf(weights: Float64Array): number {
  let total = 0;
  for (const weight of weights) total += weight;
  return total;
}

function sumOfProducts(a: Float64Array, b: Float64Array, shift: number): number {
  let total = 0;
  for (let n = shift; n < a.length; n++) total += a[n]! * b[n - shift]!;
  return total;
}
