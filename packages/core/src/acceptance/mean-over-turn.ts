/** The mean turn of a record: what comes back in each, at even places. */
export interface MeanTurn {
  readonly turns: number;
  readonly peakToPeak: number;
  /** Reach of the peak-to-peak by the noise that is left, k = 2. */
  readonly error: number;
  readonly places: Float64Array;
}

const most = 256;
const fewestSamples = 8;

/** Folds a record into one turn at a steady speed in hertz; undefined where a place would hold too few samples. */
export function meanOverTurn(samples: Float64Array, rate: number, speed: number): MeanTurn | undefined {
  const turns = Math.floor((samples.length * speed) / rate);
  if (turns < 2) return undefined;
  const used = Math.floor((turns * rate) / speed);
  const count = Math.min(most, Math.floor(rate / speed), Math.floor(used / fewestSamples));
  if (count < 16) return undefined;
  const [sums, counts, squares] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  const shift = samples[0]!;
  for (let n = 0; n < used; n++) {
    const turn = (n * speed) / rate;
    const place = Math.min(count - 1, Math.floor((turn - Math.floor(turn)) * count));
    const x = samples[n]! - shift;
    if (!Number.isFinite(x)) continue;
    sums[place]! += x;
    squares[place]! += x * x;
    counts[place]! += 1;
  }
  const places = sums.map((sum, k) => sum / counts[k]!);
  const left = squares.map((square, k) => Math.max(0, square / counts[k]! - places[k]! ** 2));
  const variance = left.reduce((sum, each) => sum + each, 0) / count;
  const [high, low] = [Math.max(...places), Math.min(...places)];
  // Two places, each a mean over its samples, and the largest of many is taken: 3 deviations rather than 2.
  const error = 3 * Math.SQRT2 * Math.sqrt(variance / Math.min(...counts));
  return { turns, peakToPeak: high - low, error, places };
}
