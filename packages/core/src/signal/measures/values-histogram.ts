import { type Answer, answer } from '../../quantity/index.ts';
import { type Gathering, notThere, tooShort } from './gathering.ts';
import { quantisationStep, type StepOfValues } from './quantisation-step.ts';

/** What stands at one end of the values. */
export interface Rail {
  readonly value: number;
  /** Samples that are exactly this value. */
  readonly samples: number;
  /** Of all samples. */
  readonly share: number;
  /** How often the record rests here for at least two samples, and the longest and the mean number of samples. */
  readonly rests: number;
  readonly longestRest: number;
  readonly meanRest: number;
}

/** One direction of change. */
export interface Slew {
  /** The greatest change a second, unit of the record per second, without sign. */
  readonly greatest: number;
  /** Share of all changes in this direction that are within a tenth of the greatest. */
  readonly shareNearGreatest: number;
}

/** How the values of a record lie, and how fast they change: what clipping, coarse steps and slew limits show. */
export interface ValuesHistogram {
  readonly samples: number;
  readonly notFinite: number;
  readonly least: number;
  readonly greatest: number;
  readonly highRail: Rail;
  readonly lowRail: Rail;
  /** Share of the samples within a hundredth of the span below the greatest and above the least value. */
  readonly shareNearGreatest: number;
  readonly shareNearLeast: number;
  /** The longest run of one and the same value, and which. */
  readonly longestFlatRun: number;
  readonly flatRunValue: number;
  readonly step: Answer<StepOfValues>;
  readonly rising: Slew;
  readonly falling: Slew;
  /** The counts of equal cells from `from`, `width` wide. */
  readonly cells: { readonly from: number; readonly width: number; readonly counts: Float64Array };
}

const cellCount = 4096;
const mostDistinct = 8192;

/**
 * Rails (samples on the greatest and the least value, and how long they rest there), longest flat run, quantisation
 * step, changes per second. `rate` in samples a second. Runs of equal values are exact; the shares near an extreme are
 * counted in cells: within 1/4,096 to 1/2,048 of the span for values, within 1.6 % for changes.
 */
export function valuesHistogram(rate: number): Gathering<Answer<ValuesHistogram>> {
  const cells = growingCells();
  const [rising, falling] = [changeCounts(), changeCounts()];
  const distinct = new Set<number>();
  const high = railCounter((value, best) => value > best);
  const low = railCounter((value, best) => value < best);
  let [samples, notFinite] = [0, 0];
  let previous = Number.NaN;
  let [run, longest, longestValue] = [0, 0, 0];

  return {
    take(block) {
      for (let n = 0; n < block.length; n++) {
        const x = block[n]!;
        if (x - x !== 0) {
          notFinite++;
          previous = Number.NaN;
          run = 0;
          high.leave();
          low.leave();
          continue;
        }
        samples++;
        cells.count(x);
        high.see(x);
        low.see(x);
        if (x === previous) run++;
        else {
          run = 1;
          if (distinct.size < mostDistinct) distinct.add(x);
        }
        if (run > longest) {
          longest = run;
          longestValue = x;
        }
        const change = x - previous;
        if (change > 0) rising.count(change);
        else if (change < 0) falling.count(-change);
        previous = x;
      }
    },
    result() {
      if (samples === 0 && notFinite > 0) return notThere('at least two samples that are finite numbers');
      if (samples < 2) return tooShort(samples, 2);
      const [least, greatest] = [low.rail(samples).value, high.rail(samples).value];
      const near = (greatest - least) / 100;
      return answer({
        samples,
        notFinite,
        least,
        greatest,
        highRail: high.rail(samples),
        lowRail: low.rail(samples),
        shareNearGreatest: cells.between(greatest - near, greatest) / samples,
        shareNearLeast: cells.between(least, least + near) / samples,
        longestFlatRun: longest,
        flatRunValue: longestValue,
        step: quantisationStep(Float64Array.from(distinct)),
        rising: rising.slew(rate),
        falling: falling.slew(rate),
        cells: cells.cells(),
      });
    },
  };
}

function railCounter(beyond: (value: number, best: number) => boolean) {
  let best = Number.NaN;
  let [samples, run, rests, resting, longest] = [0, 0, 0, 0, 0];
  return {
    see(value: number) {
      if (value === best) {
        samples++;
        run++;
        if (run === 2) {
          rests++;
          resting += 2;
        } else if (run > 2) resting++;
        if (run > longest) longest = run;
        return;
      }
      if (Number.isNaN(best) || beyond(value, best)) {
        best = value;
        [samples, run, rests, resting, longest] = [1, 1, 0, 0, 1];
      } else run = 0;
    },
    leave() {
      run = 0;
    },
    rail: (all: number): Rail => ({
      value: best,
      samples,
      share: samples / all,
      rests,
      longestRest: longest,
      meanRest: rests === 0 ? 1 : resting / rests,
    }),
  };
}

/** Cells that double their width when a value falls outside: each new cell takes two old ones, so nothing is lost. */
function growingCells() {
  const counts = new Float64Array(cellCount);
  let from = 0;
  let width = 0;
  let [first, only] = [Number.NaN, 0];
  const grow = (below: boolean) => {
    const half = cellCount / 2;
    const packed = new Float64Array(half);
    for (let k = 0; k < half; k++) packed[k] = counts[2 * k]! + counts[2 * k + 1]!;
    counts.fill(0);
    counts.set(packed, below ? half : 0);
    if (below) from -= cellCount * width;
    width *= 2;
  };
  const place = (x: number) => Math.floor((x - from) / width);
  const count = (x: number) => {
    if (width === 0) {
      if (Number.isNaN(first)) first = x;
      if (x === first) {
        only++;
        return;
      }
      // The first two values that differ say how wide to begin; narrow enough that the cells have to double.
      width = Math.max(Math.abs(x - first) / (cellCount / 4), Math.abs(first) * 2 ** -50, Number.MIN_VALUE * cellCount);
      from = first - (width * cellCount) / 2;
      counts[place(first)] = only;
    }
    while (x < from) grow(true);
    while (x >= from + cellCount * width) grow(false);
    counts[Math.min(cellCount - 1, place(x))]!++;
  };
  return {
    count,
    between(low: number, high: number) {
      if (width === 0) return only;
      let inside = 0;
      for (let k = Math.max(0, place(low)); k <= Math.min(cellCount - 1, place(high)); k++) inside += counts[k]!;
      return inside;
    },
    cells: () =>
      width === 0
        ? { from: first, width: 0, counts: Float64Array.of(only) }
        : { from, width, counts: Float64Array.from(counts) },
  };
}

/** Counts of positive numbers by their exponent and the first six bits after it: cells of 0.8 to 1.6 %. */
function changeCounts() {
  const counts = new Float64Array(2048 * 64);
  const number = new Float64Array(1);
  const bits = new Uint32Array(number.buffer);
  let [all, greatest] = [0, 0];
  const cellOf = (value: number) => {
    number[0] = value;
    return bits[1]! >>> 14;
  };
  return {
    count(change: number) {
      all++;
      if (change > greatest) greatest = change;
      counts[cellOf(change)]!++;
    },
    slew(rate: number): Slew {
      let near = 0;
      for (let cell = cellOf(greatest * 0.9); cell <= cellOf(greatest) && greatest > 0; cell++) near += counts[cell]!;
      return { greatest: greatest * rate, shareNearGreatest: all === 0 ? 0 : near / all };
    },
  };
}
