import { type Answer, answer } from '../../quantity/index.ts';
import { notThere } from './gathering.ts';

/** The step in which the values of a record rise. */
export interface StepOfValues {
  /** In the unit of the record. */
  readonly step: number;
  /** Different values that were looked at. */
  readonly values: number;
  /** How far they lie off whole multiples of the step, rms, as a share of it. */
  readonly offGrid: number;
}

/**
 * The step of which the distances of all values are whole multiples, in their unit. It begins with the least distance
 * of two neighbours and is refined over the whole span; values that lie further than a twentieth of a step off the grid
 * (rms) stand on none. A record that uses few of its steps may use every other one only: the step is then the one it shows.
 */
export function quantisationStep(distinct: Float64Array): Answer<StepOfValues> {
  if (distinct.length < 4) return notThere('at least four different values, to tell the step of its numbers');
  const values = Float64Array.from(distinct).sort();
  let least = Number.POSITIVE_INFINITY;
  for (let k = 1; k < values.length; k++) least = Math.min(least, values[k]! - values[k - 1]!);
  // Each place counts from the one before it, with a step that is refined as the span grows.
  let places = 0;
  let step = least;
  const place = new Float64Array(values.length);
  for (let k = 1; k < values.length; k++) {
    places += Math.round((values[k]! - values[k - 1]!) / step);
    place[k] = places;
    step = (values[k]! - values[0]!) / places;
  }
  let squares = 0;
  for (let k = 1; k < values.length; k++) {
    squares += ((values[k]! - values[k - 1]!) / step - (place[k]! - place[k - 1]!)) ** 2;
  }
  const offGrid = Math.sqrt(squares / (values.length - 1));
  if (offGrid > 0.05) return notThere('common step of its values: they stand on no grid');
  return answer({ step, values: values.length, offGrid });
}
