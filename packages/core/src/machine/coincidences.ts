import { type Answer, answer, fromAll, greatestCommonDivisor, type Missing } from '../quantity/index.ts';
import { type Along, regions, zeros } from './along-range.ts';
import { type FrequencyLine, frequencyLines, standsStill } from './frequency-line.ts';
import { statesOverRange } from './frequency-table.ts';
import { kindOf } from './kinds.ts';
import { differenceReduced, factorOf, type Reduced, sameReduced, timesReduced } from './reduced.ts';
import { type Separation, separated } from './separation.ts';
import { type SolvedTrain, solvedTrain } from './solved-train.ts';
import { type OperatingState, operatingStates, stateAt, valueOver } from './state.ts';
import type { Train } from './train.ts';

/** So many times a line. */
export interface LineMultiple {
  readonly line: FrequencyLine;
  readonly harmonic: number;
}

/** Two lines that come close somewhere in the operating range. */
export interface Coincidence {
  readonly a: LineMultiple;
  readonly b: LineMultiple;
  /** `never` where both are one at every speed; `not everywhere` where they cross, or differ only by slip or creep. */
  readonly separable: 'everywhere' | 'not everywhere' | 'never';
  /** Where they cross, in hertz of reference speed or line frequency. */
  readonly crossings: readonly number[];
  /** Where they are within the closeness asked for. */
  readonly close: readonly { readonly low: number; readonly high: number }[];
  readonly states: readonly Separation[];
  /** Where they come nearest. */
  readonly nearest: Separation;
  /** How far slip may move the two against each other where they come nearest, in hertz. */
  readonly spread: number;
  /** The line of this train that is their difference at every speed: `motor/pole-pass`. */
  readonly differBy?: string;
  /** What to do where no spectrum separates them. */
  readonly instead?: string;
}

export interface CoincidenceOptions {
  /** Relative distance that counts as close. */
  readonly within?: number;
  /** Most multiples of any one line that are looked at. */
  readonly harmonics?: number;
}

/** Two lines nearer than this, relative to their frequency, are reported unless somebody asks otherwise. Common practice, no source. */
export const usualCloseness = 0.01;

interface Walk {
  readonly solved: SolvedTrain;
  readonly at: readonly number[];
  readonly within: number;
}

interface Traced extends LineMultiple {
  readonly form: Reduced;
  readonly values: readonly number[];
}

/** The lines that can be compared over the range, and those that cannot, with what is missing. */
export function comparableLines(train: Train): {
  readonly compared: readonly FrequencyLine[];
  readonly notCompared: readonly { readonly line: FrequencyLine; readonly missing: readonly Missing[] }[];
} {
  const solved = solvedTrain(train);
  const states = statesInMotion(solved);
  const traces = frequencyLines(solved).map((line) => ({ line, trace: traceOf(states, line) }));
  return {
    compared: traces.flatMap(({ line, trace }) => (trace.known ? [line] : [])),
    notCompared: traces.flatMap(({ line, trace }) => (trace.known ? [] : [{ line, missing: trace.missing }])),
  };
}

/**
 * Pairs of lines, with their first multiples, that come close anywhere in the operating range. A pair is given in its
 * lowest multiples; lines of one element are not held against each other, nor an order of a shaft against what is that
 * order by definition. Lines whose frequency is not known are left out and named by `comparableLines`.
 */
export function coincidences(train: Train, options: CoincidenceOptions = {}): readonly Coincidence[] {
  const solved = solvedTrain(train);
  const states = statesInMotion(solved);
  if (!states.known || states.value.length === 0) return [];
  const at = states.value.map((state) => (state.at.known ? state.at.value : 0));
  const walk: Walk = { solved, at, within: options.within ?? usualCloseness };
  const lines = distinctShaftLines(solved, frequencyLines(solved));
  const traced = lines.flatMap((line) => {
    const trace = traceOf(states, line);
    return trace.known ? multiples(solved, line, trace.value, options.harmonics) : [];
  });
  const found: Coincidence[] = [];
  for (const [index, a] of traced.entries()) {
    for (const b of traced.slice(index + 1)) {
      if (ofOneElement(a.line, b.line) || !comeClose(a, b, walk.within) || !worthComparing(a, b)) continue;
      found.push(coincidence(a, b, walk, lines));
    }
  }
  return found.sort((one, other) => one.nearest.difference - other.nearest.difference);
}

/** Steps over the range: a crossing of two lines is then bracketed and halved. */
const steps = 64;

/** Standing still, every line is at zero and at every other. */
function statesInMotion(solved: SolvedTrain): Answer<readonly OperatingState[]> {
  return fromAll({ states: statesOverRange(solved, steps) }, ({ states }) =>
    states.filter(({ at }) => at.known && at.value > 0),
  );
}

interface Trace {
  readonly form: Reduced;
  readonly values: readonly number[];
}

function traceOf(states: Answer<readonly OperatingState[]>, line: FrequencyLine): Answer<Trace> {
  if (!states.known) return states;
  if (!line.reduced.known) return line.reduced;
  const form = line.reduced.value;
  const values: number[] = [];
  for (const state of states.value) {
    const value = valueOver(form, state.sources);
    if (!value.known) return value;
    values.push(value.value);
  }
  return answer({ form, values });
}

/** Shafts that turn as one have one set of orders; those of the first are kept. */
function distinctShaftLines(solved: SolvedTrain, lines: readonly FrequencyLine[]): readonly FrequencyLine[] {
  const seen: Reduced[] = [];
  return lines.filter((line) => {
    if (line.madeBy !== 'shaft' || !line.reduced.known) return true;
    const form = line.reduced.value;
    if (seen.some((before) => sameReduced(before, form))) return false;
    seen.push(form);
    return solved.train.shafts.includes(line.element);
  });
}

function multiples(
  solved: SolvedTrain,
  line: FrequencyLine,
  trace: Trace,
  most: number | undefined,
): readonly Traced[] {
  const useful = line.name.endsWith('/1x') ? Math.max(line.harmonics, mostPoles(solved)) : line.harmonics;
  const count = Math.min(useful, most ?? useful);
  return Array.from({ length: count }, (_, index) => ({
    line,
    harmonic: index + 1,
    form: timesReduced(factorOf(index + 1, { numerator: BigInt(index + 1), denominator: 1n }), trace.form),
    values: trace.values.map((value) => value * (index + 1)),
  }));
}

/** Order p of a motor with p poles lies at twice line frequency, or a pole pass from it. */
function mostPoles({ motors }: SolvedTrain): number {
  const poles = Object.values(motors).map(({ element }) => {
    const pairs = kindOf(element).drive!.polePairs(element.sheet);
    return pairs.known ? 2 * pairs.value : 0;
  });
  return Math.max(0, ...poles);
}

function ofOneElement(a: FrequencyLine, b: FrequencyLine): boolean {
  return a.element === b.element && a.madeBy === b.madeBy;
}

function worthComparing(a: Traced, b: Traced): boolean {
  if (greatestCommonDivisor(BigInt(a.harmonic), BigInt(b.harmonic)) !== 1n) return false;
  const shafts = [a, b].filter((each) => each.line.madeBy === 'shaft').length;
  const turnsOnly = [a, b].every(
    ({ line }) => line.form.known && line.form.value.every((term) => term.of.kind === 'rotation'),
  );
  return !(shafts > 0 && turnsOnly && sameReduced(a.form, b.form) && !loose(a, b));
}

/** Alike by the diameters, but one of them lies behind a belt or rim that falls back: they beat with each other. */
function loose(a: Traced, b: Traced): boolean {
  const widths = [a, b].map(({ form }) => form.map(({ times, low, high }) => (high - low) / Math.abs(times)));
  return Math.max(...widths.flat()) > 0 && widths[0]!.some((width, index) => width !== widths[1]![index]);
}

function comeClose(a: Traced, b: Traced, within: number): boolean {
  const near = closeness(a, b, within);
  let before = 0;
  return a.values.some((value, index) => {
    const difference = value - b.values[index]!;
    const crossed = index > 0 && Math.sign(difference) * Math.sign(before) < 0;
    before = difference;
    return crossed || near(value, b.values[index]!) <= 0;
  });
}

/** How far two frequencies lie beyond what counts as close; a resonance is as wide as its band. */
function closeness(a: Traced, b: Traced, within: number): (one: number, other: number) => number {
  const [wideA, wideB] = [a, b].map(({ line }) => (standsStill(line) ? slipOf(line) : 0)) as [number, number];
  return (one, other) => Math.abs(one - other) - Math.max(within * Math.max(one, other), wideA * one + wideB * other);
}

function coincidence(a: Traced, b: Traced, walk: Walk, lines: readonly FrequencyLine[]): Coincidence {
  const same = sameReduced(a.form, b.form);
  const beats = same && loose(a, b);
  const never = same && !beats;
  const apart = along(walk, a, b, (one, other) => (same ? 0 : one - other));
  const excess = along(walk, a, b, closeness(a, b, walk.within));
  const crossings = same ? [] : zeros(apart);
  const close = same ? [{ low: walk.at[0]!, high: walk.at.at(-1)! }] : regions(excess, crossings);
  const nearestStep = apart.steps.reduce((best, each) => (Math.abs(each.value) < Math.abs(best.value) ? each : best));
  const nearestAt = crossings[0] ?? nearestStep.at;
  const separation = (at: number, state?: string) => {
    const frequencies = [valueAt(walk, a.form, at), valueAt(walk, b.form, at)] as const;
    return separated(apart.value(at), at, frequencies, state);
  };
  const states = operatingStates(walk.solved).flatMap(({ name, at }) => (at.known ? [separation(at.value, name)] : []));
  const differBy = same ? undefined : lineThatIs(differenceReduced(a.form, b.form), lines);
  return {
    a: { line: a.line, harmonic: a.harmonic },
    b: { line: b.line, harmonic: b.harmonic },
    separable: never ? 'never' : beats || crossings.length > 0 ? 'not everywhere' : 'everywhere',
    crossings,
    close,
    states,
    nearest: separation(nearestAt),
    spread: [a, b].reduce(
      (sum, each) => sum + (slipOf(each.line) + loosenessOf(each.form)) * valueAt(walk, each.form, nearestAt),
      0,
    ),
    ...(differBy === undefined ? {} : { differBy }),
    ...(never ? { instead: otherMeans(a.line, b.line) } : beats ? { instead: byPhase } : {}),
  };
}

/** How far a form may lie from its middle because of what slips or creeps before it. */
function loosenessOf(form: Reduced): number {
  return Math.max(
    ...form.map(({ times, low, high }) => Math.max(Math.abs(high - times), Math.abs(times - low)) / Math.abs(times)),
  );
}

const byPhase =
  'take a phase reference on each of the two shafts and average by either: their beat is the creep or slip between them, too slow for a spectrum';

function slipOf({ slip }: FrequencyLine): number {
  return Math.max(-slip.low, slip.high);
}

function along(walk: Walk, a: Traced, b: Traced, of: (one: number, other: number) => number): Along {
  return {
    steps: walk.at.map((at, index) => ({ at, value: of(a.values[index]!, b.values[index]!) })),
    value: (at) => of(valueAt(walk, a.form, at), valueAt(walk, b.form, at)),
  };
}

function valueAt({ solved }: Walk, form: Reduced, at: number): number {
  const value = valueOver(form, stateAt(solved, answer(at)).sources);
  return value.known ? value.value : Number.POSITIVE_INFINITY;
}

function lineThatIs(difference: Reduced, lines: readonly FrequencyLine[]): string | undefined {
  const opposite = timesReduced(factorOf(-1, { numerator: -1n, denominator: 1n }), difference);
  return lines.find(
    ({ reduced }) => reduced.known && (sameReduced(reduced.value, difference) || sameReduced(reduced.value, opposite)),
  )?.name;
}

function otherMeans(a: FrequencyLine, b: FrequencyLine): string {
  const electrical = [a, b].filter(
    (line) => line.form.known && line.form.value.some((term) => term.of.kind === 'line-frequency'),
  );
  return electrical.length === 1
    ? 'switch the supply off under supervision and see which goes at once, or compare with the motor current'
    : 'compare the levels at both places, or their phase; the spectrum at one place shows one line';
}
