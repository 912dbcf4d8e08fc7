import type { Target } from '../demand/target.ts';
import { type Answer, type Band, fromAll } from '../quantity/index.ts';
import { magnitude } from '../signal/complex.ts';
import type { Prediction } from './prediction.ts';

/** How far the response lies from 1, worst over the frequencies that count for a target. */
export interface ResponseFound {
  readonly frequency: number;
  readonly error: number;
}

/** Frequencies at which a target's response is judged: its own, or a scan of its band with the sharp turns in it. */
function judgedFrequencies(target: Target, features: readonly number[]): Answer<readonly number[]> {
  if (!target.observable.scansBand) return target.frequencies;
  return fromAll({ band: target.band }, ({ band }) => scan(band, features));
}

const scanPoints = 240;

/** A logarithmic scan of a band, ends included, with a finer look about each sharp turn inside it. */
export function scan(band: Band, features: readonly number[]): readonly number[] {
  const ratio = band.high / band.low;
  const points = Array.from({ length: scanPoints + 1 }, (_, index) => band.low * ratio ** (index / scanPoints));
  for (const feature of features) {
    for (let step = -20; step <= 20; step++) {
      const near = feature * (1 + step / 400);
      if (near > band.low && near < band.high) points.push(near);
    }
  }
  return points.sort((a, b) => a - b);
}

const judgedBefore = new WeakMap<Prediction, Map<Target, Answer<ResponseExtremes>>>();

export interface ResponseExtremes {
  readonly highest: ResponseFound;
  readonly lowest: ResponseFound;
}

/** Both extremes of the response error of a target: where it reads highest and where it reads lowest. */
export function responseExtremes(target: Target, predicted: Prediction): Answer<ResponseExtremes> {
  const known = judgedBefore.get(predicted) ?? new Map<Target, Answer<ResponseExtremes>>();
  judgedBefore.set(predicted, known);
  const before = known.get(target);
  if (before !== undefined) return before;
  const extremes = scannedExtremes(target, predicted);
  known.set(target, extremes);
  return extremes;
}

function scannedExtremes(target: Target, predicted: Prediction): Answer<ResponseExtremes> {
  return fromAll(
    { response: predicted.response, frequencies: judgedFrequencies(target, predicted.features) },
    ({ response, frequencies }) => {
      const found = frequencies.map((frequency) => ({ frequency, error: magnitude(response(frequency)) - 1 }));
      const byError = (a: ResponseFound, b: ResponseFound) => a.error - b.error;
      const sorted = [...found].sort(byError);
      return { highest: sorted.at(-1)!, lowest: sorted[0]! };
    },
  );
}
