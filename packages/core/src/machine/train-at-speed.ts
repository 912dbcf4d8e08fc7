import { type Answer, answer } from '../quantity/index.ts';
import type { Coincidence } from './coincidences.ts';
import { type FrequencyLine, frequencyAt, frequencyBetween, frequencyLines } from './frequency-line.ts';
import { hannSeparation, type Separation } from './separation.ts';
import { solvedTrain } from './solved-train.ts';
import { type MapMeeting, usualDistance } from './speed-map.ts';
import { type OperatingState, stateAt } from './state.ts';
import type { Train } from './train.ts';

/** One line at the speed that is held: its kinematic frequency in hertz, and where it may lie with slip. */
export interface LineAtSpeed {
  readonly line: FrequencyLine;
  readonly frequency: Answer<number>;
  readonly between: { readonly low: number; readonly high: number } | undefined;
}

/** Two lines that come close at this speed, or within a small change of it. */
export interface CloseAtSpeed {
  readonly of: Coincidence;
  /** How far apart they are here. */
  readonly here: Separation;
  /** Whether they count as close at this very speed. */
  readonly now: boolean;
}

/** An order beside something that stands still, at this speed. */
export interface MeetingAtSpeed {
  readonly of: MapMeeting;
  /** Of the order, in hertz. */
  readonly frequency: number;
  /** How far it stays from the band, relative to the edge; 0 inside. */
  readonly relative: number;
}

/** Everything a train does at one speed. */
export interface TrainAtSpeed {
  /** Reference speed or line frequency, in hertz. */
  readonly at: number;
  /** Every independent source of frequencies at it. */
  readonly state: OperatingState;
  readonly lines: readonly LineAtSpeed[];
  readonly close: readonly CloseAtSpeed[];
  readonly meetings: readonly MeetingAtSpeed[];
}

/** What comes close within this change of speed is told too, relative. Common practice, no source. */
export const usualSpeedChange = 0.02;

/** The train at a reference speed or line frequency in hertz, with what of its coincidences and meetings lies there. */
export function trainAtSpeed(
  train: Train,
  at: number,
  over: { readonly coincidences: readonly Coincidence[]; readonly meetings: readonly MapMeeting[] },
): TrainAtSpeed {
  const solved = solvedTrain(train);
  const state = stateAt(solved, answer(at));
  const lines = frequencyLines(solved).map(
    (line): LineAtSpeed => ({ line, frequency: frequencyAt(line, state), between: frequencyBetween(line, state) }),
  );
  return {
    at,
    state,
    lines,
    close: over.coincidences
      .flatMap((each) => closeAt(each, at, state) ?? [])
      .sort((a, b) => Number(b.now) - Number(a.now) || a.here.difference - b.here.difference),
    meetings: over.meetings
      .flatMap((each) => meetingAt(each, state) ?? [])
      .sort((a, b) => a.relative - b.relative || a.frequency - b.frequency),
  };
}

function closeAt(of: Coincidence, at: number, state: OperatingState): CloseAtSpeed | undefined {
  const [low, high] = [at * (1 - usualSpeedChange), at * (1 + usualSpeedChange)];
  if (!of.close.some((each) => each.low <= high && each.high >= low)) return undefined;
  const [a, b] = [of.a, of.b].map(({ line, harmonic }) => multiple(line, harmonic, state));
  if (a === undefined || b === undefined) return undefined;
  const apart = Math.abs(a - b);
  // What is left of two numbers that are one is their last digit.
  const difference = of.separable === 'never' || apart < 1e-9 * Math.max(1, at) ? 0 : apart;
  const resolution = difference / hannSeparation;
  return {
    of,
    here: {
      at,
      frequencies: [a, b],
      difference,
      ...(difference === 0 ? {} : { resolution, recordLength: 1 / resolution }),
    },
    now: of.close.some((each) => each.low <= at && at <= each.high),
  };
}

function meetingAt(of: MapMeeting, state: OperatingState): MeetingAtSpeed | undefined {
  const frequency = multiple(of.order, of.harmonic, state);
  if (frequency === undefined || !(frequency > 0)) return undefined;
  const { low, high } = of.band;
  const relative = frequency < low ? 1 - frequency / low : frequency > high ? frequency / high - 1 : 0;
  return relative > usualDistance ? undefined : { of, frequency, relative };
}

function multiple(line: FrequencyLine, harmonic: number, state: OperatingState): number | undefined {
  const found = frequencyAt(line, state);
  return found.known ? found.value * harmonic : undefined;
}
