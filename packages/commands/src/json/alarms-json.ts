import {
  alarmLogicSheet,
  type PointAlarms,
  type RegisterRow,
  responseTimeSheet,
  type Sheet,
  showMeasure,
  statedResponseTime,
  type WindowSetPoints,
} from '@soundpost/core';
import { sheetJson } from './sheet-json.ts';
import { answerJson, levelJson, quantityJson, statedJson } from './values-json.ts';

const time = (value: number) => quantityJson('time', value);

function registerRowJson(row: RegisterRow): unknown {
  return {
    name: row.name,
    ...(row.does === undefined ? {} : { does: row.does }),
    level: answerJson(row.level, levelJson),
    because: showMeasure(row.because),
    ...(row.delay === undefined ? {} : { delay: statedJson(row.delay, time) }),
    ...(row.current === undefined
      ? {}
      : { current: answerJson(row.current, (current) => quantityJson('current', current)) }),
    ...(row.share === undefined ? {} : { share: answerJson(row.share, (share) => quantityJson('fraction', share)) }),
    ...(row.counts === undefined ? {} : { counts: answerJson(row.counts, (counts) => counts) }),
    ...(row.voltage === undefined ? {} : { voltage: answerJson(row.voltage, levelJson) }),
  };
}

/** The set points of a point as they are set and read, how the trip is decided, and how long it takes. */
export function alarmsJson({ stated, register }: PointAlarms, at: string): unknown {
  const { baseline, logic, response, delay, tripDelay } = stated;
  return {
    baseline: statedJson(baseline, levelJson),
    register: register.map(registerRowJson),
    ...(logic === undefined ? {} : { logic: sheetJson(logic as Sheet, alarmLogicSheet) }),
    ...(response === undefined
      ? {}
      : {
          responseTime: {
            ...(sheetJson(response as Sheet, responseTimeSheet) as object),
            delay: statedJson(tripDelay ?? delay, time),
            total: answerJson(statedResponseTime(response, tripDelay ?? delay, at).total, time),
          },
        }),
  };
}

/** Set points about a motion the machine works by, as that motion and as its acceleration. */
export function windowJson({ window, accelerations }: WindowSetPoints): unknown {
  return {
    motion: answerJson(window, ({ alertLow, alertHigh, trip }) => ({
      alertLow: levelJson(alertLow),
      alertHigh: levelJson(alertHigh),
      trip: levelJson(trip),
    })),
    acceleration: answerJson(accelerations, ({ alertLow, alertHigh, trip }) => ({
      alertLow: levelJson(alertLow),
      alertHigh: levelJson(alertHigh),
      trip: levelJson(trip),
    })),
  };
}
