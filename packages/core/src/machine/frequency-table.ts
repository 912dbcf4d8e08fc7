import { type Answer, answer, type Missing, showFraction, toNumber } from '../quantity/index.ts';
import { showForm } from './form.ts';
import { type FrequencyLine, frequencyAt, frequencyBetween, frequencyLines, onceAround } from './frequency-line.ts';
import { kindOf } from './kinds.ts';
import { type SolvedTrain, solvedTrain } from './solved-train.ts';
import { type OperatingState, operatingRange, operatingStates, stateAt } from './state.ts';
import type { Train } from './train.ts';

/** One line at one state: its kinematic frequency, and where it may lie with what slips or is not known. */
export interface FrequencyCell {
  readonly state: string;
  readonly frequency: Answer<number>;
  readonly between?: { readonly low: number; readonly high: number };
}

export interface FrequencyRow {
  readonly line: FrequencyLine;
  /** `40 × motor + 2 × line frequency of motor`, where the factors are known. */
  readonly form: string | undefined;
  readonly cells: readonly FrequencyCell[];
  /** From the lowest to the highest it ever lies over the operating range, slip included; unknown names what is missing. */
  readonly range: Answer<{ readonly low: number; readonly high: number }>;
}

/** A shaft with its exact ratio to the reference shaft, and its speed in hertz at each state. */
export interface ShaftRow {
  readonly shaft: string;
  /** `1456/15`; negative turns the other way; unknown names what is missing. */
  readonly ratio: Answer<string>;
  /** One turn of it, over what is independent at this train. */
  readonly turn: FrequencyLine;
  readonly cells: readonly FrequencyCell[];
}

/** Pulses of a shaft, by which a record may be counted in turns. */
export interface PulseRow {
  readonly element: string;
  readonly shaft: string;
  readonly perTurn: Answer<number>;
  /** One turn of the shaft. */
  readonly turn: FrequencyLine;
}

export interface FrequencyTable {
  readonly of: string;
  readonly reference: string;
  readonly states: readonly OperatingState[];
  readonly shafts: readonly ShaftRow[];
  readonly rows: readonly FrequencyRow[];
  readonly pulses: readonly PulseRow[];
}

/** Every frequency of a train at every state, and its range. */
export function frequencyTable(train: Train): FrequencyTable {
  const solved = solvedTrain(train);
  const states = operatingStates(solved);
  const lines = frequencyLines(solved);
  const walked = statesOverRange(solved);
  const rows = lines.map(
    (line): FrequencyRow => ({
      line,
      form: line.form.known ? showForm(line.form.value) : undefined,
      cells: states.map((state) => cell(line, state)),
      range: rangeOf(line, walked),
    }),
  );
  const shafts = train.shafts.map((shaft): ShaftRow => {
    const once = onceAround(solved, shaft);
    const known = solved.speeds.shafts[shaft]!;
    const ratio: Answer<string> = known.known
      ? answer(
          known.value.low === known.value.high
            ? showFraction(known.value.ratio)
            : toNumber(known.value.ratio).toPrecision(5),
        )
      : known;
    return { shaft, ratio, turn: once, cells: states.map((state) => cell(once, state)) };
  });
  return { of: train.of, reference: solved.speeds.reference, states, shafts, rows, pulses: pulseRows(solved) };
}

function pulseRows(solved: SolvedTrain): readonly PulseRow[] {
  return solved.train.elements.flatMap((element) => {
    const { pulses } = kindOf(element);
    if (pulses === undefined) return [];
    const shaft = (element.shafts as Readonly<Record<string, string>>)[pulses.on]!;
    const perTurn: Answer<number> = pulses.perTurn(element.sheet);
    return [{ element: element.name, shaft, perTurn, turn: onceAround(solved, shaft) }];
  });
}

function cell(line: FrequencyLine, state: OperatingState): FrequencyCell {
  const between = frequencyBetween(line, state);
  return { state: state.name, frequency: frequencyAt(line, state), ...(between === undefined ? {} : { between }) };
}

/** Steps in which a range is walked: fine enough for the smooth curve of a slip law between its ends. */
const steps = 32;

/** States over the whole range, ends included. */
export function statesOverRange(solved: SolvedTrain, count: number = steps): Answer<readonly OperatingState[]> {
  const range = operatingRange(solved.train);
  if (!range.known) return range;
  const { low, high } = range.value;
  return answer(
    Array.from({ length: count + 1 }, (_, index) => stateAt(solved, answer(low + ((high - low) * index) / count))),
  );
}

function rangeOf(line: FrequencyLine, states: Answer<readonly OperatingState[]>): FrequencyRow['range'] {
  if (!states.known) return states;
  const missing: Missing[] = [];
  let [low, high] = [Number.POSITIVE_INFINITY, 0];
  for (const state of states.value) {
    const between = frequencyBetween(line, state);
    if (between === undefined) {
      const frequency = frequencyAt(line, state);
      if (!frequency.known) missing.push(...frequency.missing);
      break;
    }
    low = Math.min(low, between.low);
    high = Math.max(high, between.high);
  }
  return missing.length > 0 ? { known: false, missing } : answer({ low, high });
}
