import { cardCounts, type InputCard } from '../../chain/formulas/counts-scaling.ts';
import { transmittedCurrent } from '../../chain/formulas/loop-scaling.ts';
import type { Prediction } from '../../chain/prediction.ts';
import {
  type Answer,
  answer,
  fromAll,
  type Level,
  type Motion,
  type Sheet,
  type Stated,
  type Tolerance,
  thenAnswer,
} from '../../quantity/index.ts';
import type { Deed, LoopScale } from '../register.ts';
import { eventReader, type MachineEvent } from './event-reading.ts';

/** A set point that watches: what it does, and its level with motion, detector and band. */
export interface WatchingSetPoint {
  readonly name: string;
  readonly does: Deed;
  readonly level: Answer<Level>;
}

/** The way on of what the chain indicates, where it is a loop. */
export interface EventScales {
  readonly loop?: Answer<LoopScale>;
  readonly card?: Answer<InputCard>;
  /** Line spacing and least distance from the noise at which an analyst sees a line, in hertz and decibels. */
  readonly lines?: { readonly spacing: number; readonly detection: number };
}

/** When one set point acts, in days from the beginning; a day that is left out is never, within the event. */
export interface AlarmDay {
  readonly name: string;
  readonly does: Deed;
  readonly level: Level<Motion>;
  readonly day: number | undefined;
  /** On which day it would act if the chain showed the motion as it is. */
  readonly trueDay: number | undefined;
  /** With the most and the least this chain may show by its tolerance and the error of its zero. */
  readonly earliest: number | undefined;
  readonly latest: number | undefined;
  /** At the end of the event: the motion as it is, as it is indicated, and as it is read. */
  readonly atEnd: {
    readonly truth: Level<Motion>;
    readonly indicated: Level<Motion>;
    readonly current?: number;
    readonly counts?: number;
  };
}

/** Steps in which the event is walked before a crossing is closed in on. */
const steps = 400;

/** The day of one set point: read with every scale that is known, and with the most and the least the chain may show. */
export function alarmDay(
  event: MachineEvent,
  predicted: Prediction,
  { name, does, level: set }: WatchingSetPoint,
  scales: EventScales,
): Answer<AlarmDay> {
  return thenAnswer(set, (stated) => {
    // Set points of these rooms are motions; a voltage has no growth.
    const like = stated as Level<Motion>;
    return fromAll(
      {
        read: eventReader(event.parts, like, predicted),
        loop: scales.loop ?? answer(undefined),
        card: scales.card ?? answer(undefined),
        spread: spreadOf(predicted),
      },
      ({ read, loop, card, spread }) => {
        const asRead = (value: number) => reading(value, loop, card);
        const threshold = asRead(like.value).value;
        const acts = (gain: number, zero: number) => (day: number) =>
          asRead(read.indicated(day).value * gain + zero).value >= threshold;
        const zero = (loop?.high.value ?? 0) * spread.zero;
        const last = read.indicated(event.days);
        const { current, counts } = asRead(last.value);
        return {
          name,
          does,
          level: like,
          day: firstDay(event.days, acts(1, 0)),
          trueDay: firstDay(event.days, (day) => read.truth(day).value >= like.value),
          earliest: firstDay(event.days, acts(1 + spread.piece.high, zero)),
          latest: firstDay(event.days, acts(1 + spread.piece.low, -zero)),
          atEnd: {
            truth: read.truth(event.days),
            indicated: last,
            ...(current === undefined ? {} : { current }),
            ...(counts === undefined ? {} : { counts }),
          },
        };
      },
    );
  });
}

/** A value as it is compared: as counts, as current, or as it is. */
function reading(
  value: number,
  loop: LoopScale | undefined,
  card: InputCard | undefined,
): { readonly value: number; readonly current?: number; readonly counts?: number } {
  if (loop === undefined) return { value };
  const current = transmittedCurrent(value, loop.low.value, loop.high.value);
  if (card === undefined) return { value: current, current };
  const counts = cardCounts(current, card);
  return { value: counts, current, counts };
}

/** Deviation of one piece, and error of the zero as a share of the range; none where the sheet states none. */
function spreadOf({ chain }: Prediction): Answer<{ readonly piece: Tolerance; readonly zero: number }> {
  const sheet = chain.parts.transducer.sheet as Sheet;
  const values = sheet.values as Readonly<Record<string, Stated<unknown> | undefined>>;
  const piece = values['sensitivityTolerance'] as Stated<Tolerance> | undefined;
  return fromAll({ zero: chain.transducer.oneNumber?.zeroError ?? answer(0) }, ({ zero }) => ({
    piece: piece?.known === true ? piece.value : { low: 0, high: 0 },
    zero,
  }));
}

/** The first day on which something holds, closed in on by halving between the steps of a walk. */
export function firstDay(days: number, holds: (day: number) => boolean): number | undefined {
  if (holds(0)) return 0;
  for (let step = 1; step <= steps; step++) {
    let [before, after] = [((step - 1) * days) / steps, (step * days) / steps];
    if (!holds(after)) continue;
    for (let halving = 0; halving < 24; halving++) {
      const middle = (before + after) / 2;
      if (holds(middle)) after = middle;
      else before = middle;
    }
    return after;
  }
  return undefined;
}
