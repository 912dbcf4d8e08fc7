import type { AlarmDay, EventScales, WatchingSetPoint } from '../alarm/event/alarm-day.ts';
import { isInBand, type MachineEvent } from '../alarm/event/event-reading.ts';
import { steadyGrowth } from '../alarm/event/growth.ts';
import { type EventRecord, simulatedEvent } from '../alarm/event/simulated-event.ts';
import type { Deed, RegisterRow } from '../alarm/register.ts';
import { deedOf } from '../alarm/rules/rule.ts';
import type { Prediction } from '../chain/prediction.ts';
import type { MeasuringPoint } from '../demand/measuring-point.ts';
import type { Policy } from '../demand/policy.ts';
import { sees, type Target } from '../demand/target.ts';
import { measured, measuredLevel, measuredSpan, type Said, said } from '../finding/measure.ts';
import {
  type Answer,
  answer,
  asMotion,
  asSineDetector,
  fromAll,
  type Level,
  level,
  type Motion,
  thenAnswer,
  unanswered,
} from '../quantity/index.ts';
import { loopAndCard, type PointAlarms } from './point-alarms.ts';
import { type SteadyBaseline, steadyBaseline } from './steady-baseline.ts';

/** A point that watches: its alarms, and the chain they are read through. */
export interface WatchingPoint {
  readonly point: MeasuringPoint;
  readonly alarms: PointAlarms;
  readonly prediction: Prediction;
  readonly policy: Policy;
}

/** What grows, from what it must show at least to the largest it may become, in so many days. */
export interface Growth {
  readonly target: Target;
  readonly days: number;
  /** The point the target is stated at, where that is another one. */
  readonly statedAt?: string;
}

/** One set point while a fault grows: its row of the register, when it acts, and why it never does. */
export interface FaultAlarm {
  readonly row: RegisterRow;
  readonly does: Deed;
  readonly acts: Answer<AlarmDay>;
  readonly never?: Said;
}

/** What every alarm of a point does while one of its targets grows. */
export interface GrowingFault {
  readonly target: string;
  readonly frequency: number;
  readonly from: Level<Motion>;
  readonly to: Level<Motion>;
  readonly days: number;
  readonly baseline: SteadyBaseline;
  readonly alarms: readonly FaultAlarm[];
  readonly record: EventRecord;
  /** What was taken for granted. */
  readonly notes: readonly Said[];
}

/**
 * The alarms of a point while a target grows by a constant factor a day, from its smallest to its largest level, as a
 * sine where its largest level lies: x(t) = smallest · (largest/smallest)^(t/days), in the motion and detector of the
 * smallest. Unknown where a level or that frequency is, where nothing swings, or where the chain senses other motion.
 */
export function growingFault(watching: WatchingPoint, { target, days, statedAt }: Growth): Answer<GrowingFault> {
  const { point, alarms, prediction } = watching;
  const of = `${statedAt ?? point.of}/${target.name}`;
  return thenAnswer(grown(target, prediction, of), ({ frequency, from, to }) => {
    const baseline = steadyBaseline(point, alarms.stated, target);
    const event: MachineEvent = {
      name: target.cause,
      at: point.of,
      days,
      parts: [
        { name: target.name, frequency, growth: steadyGrowth(from, to, days) },
        ...(baseline.part === undefined ? [] : [baseline.part]),
      ],
    };
    const rows = alarms.register.flatMap((row) => {
      const does = deedOf(row);
      return does === undefined ? [] : [{ row, does }];
    });
    const record = simulatedEvent(event, prediction, rows.map(watched), scalesOf(watching, target));
    return answer({
      target: target.name,
      frequency,
      from,
      to,
      days,
      baseline,
      alarms: rows.map(({ row, does }, index) => faultAlarm(row, does, record.alarms[index]!, target.name, frequency)),
      record,
      notes: [baseline.because, ...notesOf(target, statedAt, frequency)],
    });
  });
}

interface Grown {
  readonly frequency: number;
  readonly from: Level<Motion>;
  readonly to: Level<Motion>;
}

/** Both ends of the growth in one motion and detector, as sines of one frequency. */
function grown(target: Target, { chain }: Prediction, of: string): Answer<Grown> {
  const { reference } = chain.transducer;
  if (!sees(reference, target.reference)) return unanswered([{ of, what: `size as ${reference} motion` }]);
  if (target.observable.atRest) return unanswered([{ of, what: 'frequency (a position does not swing)' }]);
  const { smallest, largest, largestAt } = target;
  return thenAnswer(
    fromAll({ smallest, largest, largestAt }, (known) => known),
    ({ smallest: from, largest: most, largestAt: frequency }): Answer<Grown> => {
      if (!(frequency > 0)) return unanswered([{ of, what: 'frequency above zero of the largest level' }]);
      const to = asSineDetector(asMotion(most, from.quantity, frequency), from.detector);
      if (!(from.value > 0)) return unanswered([{ of, what: 'smallest level above zero' }]);
      if (!(to.value > from.value)) return unanswered([{ of, what: 'largest level above the smallest' }]);
      return answer({ frequency, from: withoutBand(from), to: withoutBand(to) });
    },
  );
}

function withoutBand({ quantity, value, detector }: Level<Motion>): Level<Motion> {
  return level(quantity, value, detector);
}

/** A set point that the loop cannot carry, being of another quantity or detector, has no day either. */
function watched({ row, does }: { readonly row: RegisterRow; readonly does: Deed }): WatchingSetPoint {
  const current = row.current ?? answer(undefined);
  return { name: row.name, does, level: fromAll({ level: row.level, current }, (known) => known.level) };
}

function scalesOf({ prediction, policy }: WatchingPoint, { observable, resolution }: Target): EventScales {
  const lines =
    observable.kind === 'line' && resolution.known
      ? { lines: { spacing: resolution.value, detection: policy.detection } }
      : {};
  return { ...loopAndCard(prediction.chain), ...lines };
}

function faultAlarm(
  row: RegisterRow,
  does: Deed,
  acts: Answer<AlarmDay>,
  target: string,
  frequency: number,
): FaultAlarm {
  if (!acts.known || acts.value.day !== undefined) return { row, does, acts };
  return { row, does, acts, never: whyNever(acts.value, target, frequency) };
}

/** Why a set point that is known does not act in all the days. */
function whyNever({ level: { band }, atEnd, trueDay }: AlarmDay, target: string, frequency: number): Said {
  if (band !== undefined && !isInBand(frequency, band)) {
    return said`'${target}' at ${measured('frequency', frequency)} lies outside its band, ${measuredSpan('frequency', band)}`;
  }
  if (trueDay === undefined) {
    return said`at the end the motion in its band is ${measuredLevel(atEnd.truth)}, below the set point`;
  }
  return said`of ${measuredLevel(atEnd.truth)} at the end the chain shows ${measuredLevel(atEnd.indicated)}`;
}

function notesOf({ observable }: Target, statedAt: string | undefined, frequency: number): readonly Said[] {
  return [
    ...(statedAt === undefined
      ? []
      : [`It is taken here as it is at ${statedAt}: no path between the two is counted.`]),
    ...(observable.scansBand
      ? [
          said`A burst is reckoned as a sine of its peak at ${measured('frequency', frequency)}: its rms is less, so an alarm on rms acts later than this, if at all.`,
        ]
      : []),
  ];
}
