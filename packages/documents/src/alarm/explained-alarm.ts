import {
  type AlarmStatement,
  clause,
  type DesignedPoint,
  faultCurrents,
  type Level,
  loopAndCard,
  loopPractice,
  type MotionWindow,
  measuringCurrents,
  namurNe43,
  quarterAboveBaseline,
  type RegisterRow,
  type SetPointName,
  type Showing,
  type Stated,
  showLevel,
  showMeasure,
  showNumber,
  showPercent,
  showQuantity,
  statedResponseTime,
} from '@soundpost/core';
import { capital, type Explain, type Explained, step, typedNumber, workedSteps } from '../derivation/explained.ts';

export const setPointWords = {
  alert: 'alert',
  alertCap: 'most the alert may be',
  trip: 'trip',
  tripCap: 'most the trip may be',
} as const satisfies Record<SetPointName, string>;

const outputOf: Readonly<Record<SetPointName, string>> = {
  alert: 'alert',
  alertCap: 'alert-cap',
  trip: 'trip',
  tripCap: 'trip-cap',
};

/** Why a set point is what it is: the policy worked with the baseline and the boundaries of the zones. */
export function explainedSetPoint(designed: DesignedPoint, name: SetPointName, showing: Showing): Explain | undefined {
  const { alarms, boundaries } = designed;
  const found = alarms?.setPoints[name];
  if (alarms === undefined || found?.known !== true) return undefined;
  return () => {
    const shown = showLevel(found.value, showing);
    const { baseline } = alarms.stated;
    const limits = boundaries.known ? boundaries.value : undefined;
    const values = {
      ...(baseline.known ? { baseline: baseline.value } : {}),
      ...(limits === undefined ? {} : { bC: limits.bc, cD: limits.cd }),
    };
    return {
      title: capital(setPointWords[name]),
      sentence: `The ${setPointWords[name]} stands at ${shown}: ${showMeasure(alarms.setPoints.reasons[name], showing)}.`,
      numbers: [
        { name: setPointWords[name], shown },
        ...(baseline.known ? [{ name: 'baseline', shown: showLevel(baseline.value, showing) }] : []),
        ...(limits === undefined
          ? []
          : [
              { name: 'boundary B/C', shown: showLevel(limits.bc, showing) },
              { name: 'boundary C/D', shown: showLevel(limits.cd, showing) },
            ]),
      ],
      steps: workedSteps('alarm-set-points', values, outputOf[name], showing),
      sources: quarterAboveBaseline.sources,
    };
  };
}

/** The level of a row of the register: a set point that follows, a value that was typed, or an end of the scale. */
export function explainedRegisterLevel(
  designed: DesignedPoint,
  row: RegisterRow,
  showing: Showing,
): Explain | undefined {
  const { alarms, point } = designed;
  if (alarms === undefined || !row.level.known) return undefined;
  if (row.name === 'alert' || row.name === 'trip') return explainedSetPoint(designed, row.name, showing);
  const shown = showLevel(row.level.value, showing);
  const typed: Stated<Level> | undefined =
    row.name === 'baseline'
      ? alarms.stated.baseline
      : alarms.stated.setPoints?.find((each) => each.name === row.name)?.level;
  if (typed?.known === true)
    return () => typedNumber(row.name, `${point.of}, alarm`, typed, shown, showMeasure(row.because, showing));
  return () => ({
    title: row.name === 'zero' ? 'Live zero of the loop' : 'End of the range of the loop',
    sentence: `${capital(showMeasure(row.because, showing))}: ${row.name === 'zero' ? `${mA(0.004, showing)} mean that nothing moves` : `${mA(0.02, showing)} mean the end of the range of the sensor`}.`,
    numbers: [{ name: row.name, shown }],
    steps: [
      step(
        row.name === 'zero' ? 'x_0 = 0 · x_1' : 'x_1 = range of the sensor',
        row.name === 'zero' ? `0 · ${shown}` : shown,
        shown,
      ),
    ],
    sources: [clause(loopPractice, 'scaling')],
  });
}

/** How a level is read further on: as a current, as a share of the range, as counts, as volts. */
export function explainedReading(
  designed: DesignedPoint,
  row: RegisterRow,
  as: 'current' | 'share' | 'counts' | 'voltage',
  showing: Showing,
): Explain | undefined {
  const chain = designed.appraisal?.prediction.chain;
  if (chain === undefined || !row.level.known || row[as]?.known !== true) return undefined;
  const told = as === 'voltage' ? asVoltage(designed, row, showing) : onLoop(designed, row, as, showing);
  if (told === undefined) return undefined;
  return () => ({
    title: `${capital(row.name)}, ${told.title}`,
    sentence: told.sentence,
    numbers: [{ name: row.name, shown: showLevel((row.level as { value: Level }).value, showing) }, ...told.numbers],
    steps: told.steps,
    sources: told.sources,
  });
}

function onLoop(
  { appraisal }: DesignedPoint,
  row: RegisterRow,
  as: 'current' | 'share' | 'counts',
  showing: Showing,
): Explained | undefined {
  const { loop, card } = loopAndCard(appraisal!.prediction.chain);
  if (loop?.known !== true || row.current?.known !== true || !row.level.known) return undefined;
  const { low, high } = loop.value;
  const show = (each: Level) => showLevel(each, { ...showing, digits: 6 });
  const current = row.current.value;
  const amperes = mA(current, showing);
  const line = step(
    'I = 4 mA + 16 mA · (x − x_0) / (x_1 − x_0)',
    `4 mA + 16 mA · (${show(row.level.value)} − ${show(low)}) / (${show(high)} − ${show(low)})`,
    amperes,
  );
  const scale = { name: 'range of the loop', shown: `${showLevel(low, showing)} to ${showLevel(high, showing)}` };
  const sources = [clause(loopPractice, 'scaling'), clause(namurNe43, 'signal levels')];
  if (as === 'current') {
    return {
      title: 'on the loop',
      sentence: `On the straight line from ${mA(0.004, showing)} to ${mA(0.02, showing)} the level is ${amperes}.`,
      numbers: [scale, { name: 'current', shown: amperes }],
      steps: [line],
      sources,
    };
  }
  if (as === 'share') {
    const share = percent((current - 0.004) / 0.016, showing);
    return {
      title: 'of the range',
      sentence: `The level lies at ${share} of the range of the loop.`,
      numbers: [scale, { name: 'share', shown: share }],
      steps: [line, step('share = (I − 4 mA) / 16 mA', `(${amperes} − 4 mA) / 16 mA`, share)],
      sources,
    };
  }
  if (card?.known !== true || row.counts?.known !== true) return undefined;
  const { currentAtLow, currentAtHigh, countsAtLow, countsAtHigh } = card.value;
  const counts = showNumber(row.counts.value, 6, showing.decimal);
  const plain = (value: number) => showNumber(value, 6, showing.decimal);
  return {
    title: 'on the card',
    sentence: `The card shows whole counts on a straight line: ${counts} for this level.`,
    numbers: [
      { name: 'current', shown: amperes },
      {
        name: 'counts of the card',
        shown: `${plain(countsAtLow)} at ${mA(currentAtLow, showing)}, ${plain(countsAtHigh)} at ${mA(currentAtHigh, showing)}`,
      },
      { name: 'counts', shown: counts },
    ],
    steps: [
      line,
      step(
        'N = round(N_0 + (N_1 − N_0) · (I − I_0) / (I_1 − I_0))',
        `round(${plain(countsAtLow)} + (${plain(countsAtHigh)} − ${plain(countsAtLow)}) · (${mA(current, { ...showing, digits: 8 })} − ${mA(currentAtLow, showing)}) / (${mA(currentAtHigh, showing)} − ${mA(currentAtLow, showing)}))`,
        counts,
      ),
    ],
    sources,
  };
}

function asVoltage({ appraisal }: DesignedPoint, row: RegisterRow, showing: Showing): Explained | undefined {
  const { sensitivity, senses } = appraisal!.prediction.chain.transducer;
  if (row.voltage?.known !== true || !row.level.known || !sensitivity.known) return undefined;
  const shown = showLevel(row.voltage.value, showing);
  const per = showQuantity(`voltage per ${senses}`, sensitivity.value, showing);
  return {
    title: 'at the output',
    sentence: `The transducer puts out ${per}, so the level is ${shown} at its output.`,
    numbers: [
      { name: 'sensitivity', shown: per },
      { name: 'at the output', shown },
    ],
    steps: [step('U = x · S', `${showLevel(row.level.value, showing)} · ${per}`, shown)],
    sources: [clause(loopPractice, 'scaling')],
  };
}

/** All waits one after the other. */
export function explainedResponseTime(
  response: NonNullable<AlarmStatement['response']>,
  delay: AlarmStatement['delay'],
  at: string,
  showing: Showing,
): Explain | undefined {
  const { times, total } = statedResponseTime(response, delay, at);
  if (!times.known || !total.known) return undefined;
  return () => {
    const shown = showQuantity('duration', total.value, showing);
    const { detector, filter, scan, delay: wait, finalElement } = times.value;
    const second = (value: number) => showQuantity('time', value, showing);
    return {
      title: 'Time from the level to the stop',
      sentence: `Each waits for the one before, so the times add to ${shown}.`,
      numbers: [
        { name: 'detector', shown: second(detector) },
        { name: 'filter', shown: second(filter) },
        { name: 'scan', shown: second(scan) },
        { name: 'delay', shown: second(wait) },
        { name: 'final element', shown: second(finalElement) },
      ],
      steps: workedSteps('trip-response-time', times.value as unknown as Record<string, unknown>, 'total', showing),
      sources: [],
    };
  };
}

const windowWords = { alertLow: 'alert below', alertHigh: 'alert above', trip: 'trip above' } as const;

/** A set point about a wanted motion, as that motion or as the acceleration of that sine. */
export function explainedWindow(
  { window, stated, point }: DesignedPoint,
  name: keyof MotionWindow,
  as: 'motion' | 'acceleration',
  showing: Showing,
): Explain | undefined {
  const from = stated.window;
  if (window === undefined || from === undefined || !window.window.known) return undefined;
  const motion = window.window.value[name];
  const shown = showLevel(motion, showing);
  if (as === 'motion' && name === 'trip') {
    const { trip } = from;
    return trip.known ? () => typedNumber('trip above', `${point.of}, window`, trip, shown) : undefined;
  }
  const { wanted, within, trip } = from;
  if (!wanted.known || !within.known || !trip.known) return undefined;
  if (as === 'acceleration' && !(window.accelerations.known && window.frequency.known)) return undefined;
  return () => {
    const acceleration = window.accelerations.known ? window.accelerations.value[name] : undefined;
    const output = { alertLow: 'low', alertHigh: 'high', trip: 'trip' }[name];
    const f = window.frequency.known ? window.frequency.value : 1;
    const told = as === 'motion' || acceleration === undefined ? shown : showLevel(acceleration, showing);
    return {
      title: `${capital(windowWords[name])}, ${as === 'motion' ? 'as motion' : 'as acceleration of that sine'}`,
      sentence:
        as === 'motion'
          ? `${capital(windowWords[name])} ${told}: the wanted motion less or plus what is accepted about it.`
          : `A sine of ${shown} at this frequency is read as ${told}.`,
      numbers: [
        { name: 'wanted', shown: showLevel(wanted.value, showing) },
        { name: 'accepted about it', shown: showQuantity('displacement', within.value, showing) },
        ...(window.frequency.known ? [{ name: 'frequency', shown: showQuantity('frequency', f, showing) }] : []),
      ],
      steps: workedSteps(
        'motion-window',
        { wanted: wanted.value, within: within.value, trip: trip.value, frequency: f },
        as === 'motion' ? `alert-${output}` : `acceleration-${output}`,
        showing,
      ),
      sources: [],
    };
  };
}

/** The limits of a stretch of the loop: published, not computed. */
export function explainedLoopState(state: string, shown: string, showing: Showing): Explain {
  return () => ({
    title: `State of the loop: ${state}`,
    sentence: `${capital(state)} is ${shown}. These currents are agreed between makers; nothing is computed.`,
    numbers: [
      { name: state, shown },
      {
        name: 'a value is told',
        shown: `${mA(measuringCurrents.low, showing)} to ${mA(measuringCurrents.high, showing)}`,
      },
      {
        name: 'failure',
        shown: `at or below ${mA(faultCurrents.low, showing)}, at or above ${mA(faultCurrents.high, showing)}`,
      },
    ],
    steps: [],
    sources: [clause(namurNe43, 'signal levels')],
  });
}

function mA(amperes: number, { decimal, digits }: Showing): string {
  return `${showNumber(amperes * 1000, digits ?? 5, decimal)} mA`;
}

function percent(share: number, { decimal }: Showing): string {
  return showPercent(share, 4, decimal).replace('+', '');
}
