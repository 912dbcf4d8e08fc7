import {
  type AlarmDay,
  type Answer,
  type FaultAlarm,
  type GrowingFault,
  type MissedPart,
  showMeasure,
} from '@soundpost/core';
import { findingJson } from './finding-json.ts';
import { answerJson, levelJson, missingJson, quantityJson, statedJson } from './values-json.ts';

const given = <T>(name: string, value: T | undefined) => (value === undefined ? {} : { [name]: value });

/** One target that grows at a point that watches; where it cannot be told, what is not known. Days are plain numbers. */
export function growingFaultJson(target: string, statedAt: string | undefined, fault: Answer<GrowingFault>): unknown {
  const named = { target, ...given('statedAt', statedAt) };
  if (!fault.known) return { ...named, ...(missingJson(fault.missing) as object) };
  const { frequency, from, to, baseline, alarms, record, notes } = fault.value;
  return {
    ...named,
    frequency: quantityJson('frequency', frequency),
    from: levelJson(from),
    to: levelJson(to),
    baselineAdded: baseline.part !== undefined,
    notes: notes.map((each) => showMeasure(each)),
    alarms: alarms.map(alarmJson),
    missed: answerJson(record.missed, (parts) => parts.map(missedJson)),
    seen: answerJson(record.seen, (parts) => parts.map(({ part, day }) => ({ part, ...given('day', day) }))),
    findings: record.findings.map(findingJson),
  };
}

function alarmJson({ row, does, acts, never }: FaultAlarm): unknown {
  return {
    name: row.name,
    does,
    level: answerJson(row.level, levelJson),
    ...(row.delay === undefined ? {} : { delay: statedJson(row.delay, (value) => quantityJson('time', value)) }),
    acts: answerJson(acts, dayJson),
    ...(never === undefined ? {} : { never: showMeasure(never) }),
  };
}

/** A day that is left out is never. */
function dayJson({ day, trueDay, earliest, latest, atEnd }: AlarmDay): unknown {
  return {
    ...given('day', day),
    ...given('trueDay', trueDay),
    ...given('earliest', earliest),
    ...given('latest', latest),
    atEnd: {
      truth: levelJson(atEnd.truth),
      indicated: levelJson(atEnd.indicated),
      ...(atEnd.current === undefined ? {} : { current: quantityJson('current', atEnd.current) }),
      ...given('counts', atEnd.counts),
    },
  };
}

function missedJson({ part, frequency, why, error, truth, indicated }: MissedPart): unknown {
  return {
    part,
    frequency: quantityJson('frequency', frequency),
    why,
    error: quantityJson('fraction', error),
    truth: levelJson(truth),
    indicated: levelJson(indicated),
  };
}
