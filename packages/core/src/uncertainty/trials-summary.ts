/** The trials are also looked at in this many parts, whose scatter tells how well the ends are known. */
export const batches = 10;

/**
 * An interval found by trials, with the standard errors of its ends at this number of trials. Those of the shortest
 * interval shrink only with the cube root of the number of trials, since it may slide at little cost.
 */
export interface TrialsInterval {
  readonly low: number;
  readonly high: number;
  readonly standardErrors: { readonly low: number; readonly high: number };
}

/** What the trials gave. */
export interface Trials {
  readonly count: number;
  readonly seed: number;
  readonly level: number;
  readonly mean: number;
  readonly standardDeviation: number;
  /** The shortest interval that holds the level of confidence. */
  readonly shortest: TrialsInterval;
  /** The interval with equal probability below and above. */
  readonly symmetric: TrialsInterval;
  /** All results in ascending order. */
  readonly results: Float64Array;
}

/** Mean, standard deviation and coverage intervals of the results of trials, which it sorts. Source: JCGM 101, 7.6 and 7.7. */
export function trialsSummary(results: Float64Array, of: { count: number; seed: number; level: number }): Trials {
  const { mean, deviation } = moments(results);
  const parts: { shortest: Ends; symmetric: Ends }[] = [];
  for (let batch = 0; batch < batches; batch++) {
    const from = Math.floor((batch * of.count) / batches);
    const part = results.slice(from, Math.floor(((batch + 1) * of.count) / batches)).sort();
    parts.push({ shortest: shortestOf(part, of.level), symmetric: symmetricOf(part, of.level) });
  }
  results.sort();
  const withErrors = (ends: Ends, which: 'shortest' | 'symmetric', gain: number) => ({
    ...ends,
    standardErrors: {
      low: scatter(parts.map((each) => each[which].low)) / gain,
      high: scatter(parts.map((each) => each[which].high)) / gain,
    },
  });
  return {
    ...of,
    mean,
    standardDeviation: deviation,
    shortest: withErrors(shortestOf(results, of.level), 'shortest', Math.cbrt(batches)),
    symmetric: withErrors(symmetricOf(results, of.level), 'symmetric', Math.sqrt(batches)),
    results,
  };
}

interface Ends {
  readonly low: number;
  readonly high: number;
}

/**
 * Mean and standard deviation, about a first value so that a large estimate does not swallow its scatter, and relative
 * to the largest deviation so that squares stay within the range of numbers.
 */
function moments(results: Float64Array): { mean: number; deviation: number } {
  const about = results[0]!;
  let largest = 0;
  for (const result of results) largest = Math.max(largest, Math.abs(result - about));
  if (largest === 0) return { mean: about, deviation: 0 };
  let sum = 0;
  for (const result of results) sum += (result - about) / largest;
  const shift = sum / results.length;
  let squares = 0;
  for (const result of results) squares += ((result - about) / largest - shift) ** 2;
  return { mean: about + largest * shift, deviation: largest * Math.sqrt(squares / (results.length - 1)) };
}

/** How many steps of the sorted results an interval spans: pM, to the nearest whole. Source: JCGM 101, 7.7. */
function stepsOf(sorted: Float64Array, level: number): number {
  return Math.min(sorted.length - 1, Math.floor(level * sorted.length + 0.5));
}

function symmetricOf(sorted: Float64Array, level: number): Ends {
  const steps = stepsOf(sorted, level);
  const first = Math.max(0, Math.floor((sorted.length - steps + 1) / 2) - 1);
  return { low: sorted[first]!, high: sorted[first + steps]! };
}

function shortestOf(sorted: Float64Array, level: number): Ends {
  const steps = stepsOf(sorted, level);
  let best = 0;
  let width = sorted[steps]! - sorted[0]!;
  for (let first = 1; first + steps < sorted.length; first++) {
    const own = sorted[first + steps]! - sorted[first]!;
    if (own < width) {
      width = own;
      best = first;
    }
  }
  return { low: sorted[best]!, high: sorted[best + steps]! };
}

function scatter(parts: readonly number[]): number {
  return moments(Float64Array.from(parts)).deviation;
}
