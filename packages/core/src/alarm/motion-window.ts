import { type FrequencyReference, frequencyOf, type LineLookup } from '../demand/frequency-reference.ts';
import {
  type Answer,
  answerOf,
  asMotion,
  asSineDetector,
  fromAll,
  type Level,
  levelField,
  quantityField,
  Refusal,
  type Stated,
  showLevel,
  showQuantity,
  thenAnswer,
} from '../quantity/index.ts';
import { clause } from '../source/source.ts';
import { tradePractice } from '../source/trade-practice.ts';
import { output, working } from '../working/index.ts';

/** Set points about a motion that is wanted: too little is as wrong as too much. */
export interface MotionWindow {
  readonly alertLow: Level<'displacement'>;
  readonly alertHigh: Level<'displacement'>;
  readonly trip: Level<'displacement'>;
}

/** Alert at wanted ± tolerance, both in the detector of what is wanted; trip as stated. */
export function motionWindow(
  wanted: Level<'displacement'>,
  tolerance: number,
  trip: Level<'displacement'>,
): MotionWindow {
  const at = (value: number) => ({ ...wanted, value });
  return { alertLow: at(wanted.value - tolerance), alertHigh: at(wanted.value + tolerance), trip };
}

/** A window of displacement as peak acceleration at the frequency of the motion: a single sine. */
export function asAcceleration(each: Level<'displacement'>, frequency: number): Level<'acceleration'> {
  return asMotion(asSineDetector(each, 'peak'), 'acceleration', frequency) as Level<'acceleration'>;
}

/** The set points of a point that watches a wanted motion, in that motion and as the accelerometer reads them. */
export interface WindowSetPoints {
  readonly window: Answer<MotionWindow>;
  readonly accelerations: Answer<Readonly<Record<keyof MotionWindow, Level<'acceleration'>>>>;
  /** Of the motion, in hertz. */
  readonly frequency: Answer<number>;
}

export interface WindowStatement {
  /** The line of that motion. */
  readonly of: Stated<FrequencyReference>;
  readonly wanted: Stated<Level<'displacement'>>;
  /** Half-width about it, in the detector of what is wanted. */
  readonly within: Stated<number>;
  readonly trip: Stated<Level<'displacement'>>;
}

/** Set points from what was stated; the lookup gives the frequency of the line that moves the machine. */
export function windowSetPoints(stated: WindowStatement, lookup: LineLookup, at: string): WindowSetPoints {
  const window = fromAll(
    {
      wanted: answerOf(stated.wanted, at, 'wanted motion'),
      within: answerOf(stated.within, at, 'width of the window'),
      trip: answerOf(stated.trip, at, 'trip'),
    },
    ({ wanted, within, trip }) => motionWindow(wanted, within, trip),
  );
  const frequency = thenAnswer(answerOf(stated.of, at, 'line of the motion'), (line) => frequencyOf(line, lookup));
  return {
    window,
    frequency,
    accelerations: fromAll({ window, frequency }, ({ window: known, frequency: f }) => ({
      alertLow: asAcceleration(known.alertLow, f),
      alertHigh: asAcceleration(known.alertHigh, f),
      trip: asAcceleration(known.trip, f),
    })),
  };
}

const motion = (meaning: string, symbol: string, example: string) =>
  levelField(['displacement'], meaning, { symbol, example });
const reading = (meaning: string, symbol: string) =>
  levelField(['acceleration'], meaning, { symbol, example: '4.26 g peak' });

export const motionWindowWorking = working({
  name: 'motion-window',
  title: 'Set points of a machine that works by its own motion, as stroke and as acceleration',
  inputs: {
    wanted: motion('Motion the machine works by', 's_0', '9 mm pp'),
    within: quantityField('displacement', 'Accepted to either side, in the same detector', {
      symbol: 'Δ',
      example: '0.5 mm',
    }),
    trip: motion('Motion at which it is stopped', 's_t', '10.5 mm pp'),
    frequency: quantityField('frequency', 'Frequency of the motion', { symbol: 'f', example: '15.3333 Hz' }),
  },
  outputs: {
    alertLow: output(motion('Alert below', 's_l', '8.5 mm pp'), 's_l = s_0 − Δ'),
    alertHigh: output(motion('Alert above', 's_h', '9.5 mm pp'), 's_h = s_0 + Δ'),
    accelerationLow: output(reading('Alert below, as peak acceleration', 'a_l'), 'a_l = (2π · f)^2 · peak(s_l)'),
    accelerationHigh: output(reading('Alert above, as peak acceleration', 'a_h'), 'a_h = (2π · f)^2 · peak(s_h)'),
    accelerationTrip: output(reading('Trip, as peak acceleration', 'a_t'), 'a_t = (2π · f)^2 · peak(s_t)'),
  },
  holds:
    'a single sine at the frequency given, at duty; inhibit both alerts while the machine starts and runs down through the modes of its springs',
  sources: [clause(tradePractice, 'stroke of vibrating screens kept within a window')],
  evaluate: ({ wanted, within, trip, frequency }) => {
    if (!(frequency > 0)) {
      throw new Refusal({
        read: `frequency=${showQuantity('frequency', frequency)}`,
        expected: 'a frequency above zero',
      });
    }
    if (!(within > 0 && within < wanted.value)) {
      throw new Refusal({
        read: `within=${showQuantity('displacement', within)}`,
        expected: `a width above zero and below ${showLevel(wanted)}`,
      });
    }
    const { alertLow, alertHigh } = motionWindow(wanted, within, trip);
    if (asSineDetector(trip, alertHigh.detector).value <= alertHigh.value) {
      throw new Refusal({
        read: `trip=${showLevel(trip)}`,
        expected: `a trip above the alert at ${showLevel(alertHigh)}`,
      });
    }
    return {
      alertLow,
      alertHigh,
      accelerationLow: asAcceleration(alertLow, frequency),
      accelerationHigh: asAcceleration(alertHigh, frequency),
      accelerationTrip: asAcceleration(trip, frequency),
    };
  },
  example: { wanted: '9 mm pp', within: '0.5 mm', trip: '10.5 mm pp', frequency: '15.3333 Hz' },
});
