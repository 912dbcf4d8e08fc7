import {
  type Band,
  type DesignedPoint,
  type Prediction,
  type Showing,
  showNumber,
  showTolerance,
  type Tolerance,
} from '@soundpost/core';
import type { Ends } from '../drawing/axis.ts';
import { plotted } from '../drawing/curve.ts';

/** Where the response stays within one tolerance, and which targets ask for it, by their numbers. */
export interface UsableBand {
  readonly tolerance: Tolerance;
  readonly targets: readonly number[];
  readonly stretches: readonly Band[];
}

/** One usable band for each tolerance that a target of the point asks for, read off the predicted response. */
export function usableBands(
  { point, appraisal }: Pick<DesignedPoint, 'point' | 'appraisal'>,
  ends: Ends,
): readonly UsableBand[] {
  if (appraisal === undefined || !appraisal.prediction.response.known) return [];
  const asked: { tolerance: Tolerance; targets: number[] }[] = [];
  for (const [index, target] of point.targets.entries()) {
    if (!target.tolerance.known || target.observable.atRest) continue;
    const { low, high } = target.tolerance.value;
    const same = asked.find(({ tolerance }) => tolerance.low === low && tolerance.high === high);
    if (same === undefined) asked.push({ tolerance: target.tolerance.value, targets: [index + 1] });
    else same.targets.push(index + 1);
  }
  return asked.map(({ tolerance, targets }) => ({
    tolerance,
    targets,
    stretches: stretchesWithin(appraisal.prediction, tolerance, ends),
  }));
}

/** `response within ±10 % from 1.06 to 8160 Hz (asked by targets 1, 2)`; short: `±10 %: 1.06 to 8160 Hz`. */
export function usableWords({ tolerance, stretches, targets }: UsableBand, showing: Showing, whole = true): string {
  const shown = showTolerance(tolerance, showing);
  const spans = stretches.map((each) => `${readOff(each.low)} to ${readOff(each.high)} Hz`).join(' and ');
  if (!whole) return `${shown}: ${spans === '' ? 'nowhere here' : spans}`;
  const asked = ` (asked by ${targets.length === 1 ? 'target' : 'targets'} ${inStretches(targets)})`;
  return spans === '' ? `nowhere here within ${shown}${asked}` : `response within ${shown} from ${spans}${asked}`;
}

/** `1 to 4, 6`. */
function inStretches(numbers: readonly number[]): string {
  const stretches: number[][] = [];
  for (const number of numbers) {
    const last = stretches.at(-1);
    if (last?.at(-1) === number - 1) last.push(number);
    else stretches.push([number]);
  }
  return stretches.map((each) => (each.length > 2 ? `${each[0]} to ${each.at(-1)}` : each.join(', '))).join(', ');
}

/** Three digits: it is read off a curve. */
function readOff(frequency: number): string {
  return showNumber(Number(frequency.toPrecision(3)), 3);
}

/** The response relative to the nominal sensitivity, as its size. */
export function responseSize(prediction: Prediction): ((frequency: number) => number) | undefined {
  const { response } = prediction;
  if (!response.known) return undefined;
  return (frequency) => {
    const { re, im } = response.value(frequency);
    return Math.hypot(re, im);
  };
}

function stretchesWithin(prediction: Prediction, tolerance: Tolerance, ends: Ends): readonly Band[] {
  const size = responseSize(prediction)!;
  const within = (frequency: number) => {
    const error = size(frequency) - 1;
    return error >= tolerance.low && error <= tolerance.high;
  };
  const at = plotted(ends.low, ends.high, prediction.features, 400);
  const found: { low: number; high: number }[] = [];
  let then = false;
  let before: number | undefined;
  for (const frequency of at) {
    const now = within(frequency);
    if (now && !then) {
      const edge = before === undefined ? frequency : edgeBetween(before, frequency, within);
      found.push({ low: edge, high: frequency });
    } else if (now) found.at(-1)!.high = frequency;
    else if (then) found.at(-1)!.high = edgeBetween(frequency, before!, within);
    then = now;
    before = frequency;
  }
  // Beyond the mounted resonance the curve crosses 1 once more on its way down: nobody measures there.
  const { mountedResonance } = prediction.chain.transducer;
  const end = mountedResonance?.known === true ? mountedResonance.value : Number.POSITIVE_INFINITY;
  return found.filter((stretch) => stretch.low < end);
}

/** The place between a frequency outside and one inside, by halving. */
function edgeBetween(outside: number, inside: number, within: (frequency: number) => boolean): number {
  let [out, into] = [outside, inside];
  for (let round = 0; round < 30; round++) {
    const middle = Math.sqrt(out * into);
    if (within(middle)) into = middle;
    else out = middle;
  }
  return into;
}
