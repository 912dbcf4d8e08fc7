import {
  alarmLogicSheet,
  type PointAlarms,
  responseTimeSheet,
  type Sheet,
  showLevel,
  showMeasure,
  showNumber,
  showQuantity,
  statedResponseTime,
} from '@soundpost/core';
import { type Line, labelled, paragraph, plainLines } from '../layout/line.ts';
import { type Column, table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';
import { sheetLines } from './sheet-text.ts';
import { answerText, cellText, distinctMissing, missingText } from './values-text.ts';

/** The register of alarms as they are set and read: engineering unit, loop, card. */
export function alarmLines(alarms: PointAlarms, at: string, manner: Manner): readonly Line[] {
  const { showing, width } = manner;
  const onLoop = alarms.register.some((row) => row.current !== undefined);
  const onCard = alarms.register.some((row) => row.counts !== undefined);
  const atOutput = alarms.register.some((row) => row.voltage !== undefined);
  const columns: Column[] = [
    { head: 'alarm' },
    { head: 'level' },
    ...(onLoop ? [{ head: 'loop, mA', align: 'decimal' } as const] : []),
    ...(onCard ? [{ head: 'counts', align: 'right' } as const] : []),
    ...(atOutput ? [{ head: 'at the output' }] : []),
    { head: 'lasting' },
    { head: 'because' },
  ];
  const rows = alarms.register.map((row) => [
    row.name,
    cellText(row.level, (level) => showLevel(level, showing)),
    ...(onLoop
      ? [
          row.current === undefined
            ? ''
            : cellText(row.current, (amperes) => showNumber(amperes * 1000, 4, showing.decimal)),
        ]
      : []),
    ...(onCard ? [row.counts === undefined ? '' : cellText(row.counts, String)] : []),
    ...(atOutput ? [row.voltage === undefined ? '' : cellText(row.voltage, (level) => showLevel(level, showing))] : []),
    row.delay === undefined ? '' : row.delay.known ? showQuantity('time', row.delay.value, showing) : '?',
    showMeasure(row.because, showing),
  ]);
  const missing = alarms.register.flatMap((row) =>
    [row.level, row.current, row.counts, row.voltage].flatMap((each) =>
      each === undefined || each.known ? [] : each.missing,
    ),
  );
  return [
    ...plainLines(table(columns, rows, width, '  ')),
    ...(missing.length === 0 ? [] : paragraph(`  ? ${missingText(distinctMissing(missing))}`, width, '  ')),
    ...logicLines(alarms, manner),
    ...responseLines(alarms, at, manner),
  ];
}

const column = 16;

/** How the trip is decided, where its owner began to say so. */
function logicLines({ stated: { logic } }: PointAlarms, manner: Manner): readonly Line[] {
  if (logic === undefined) return [];
  return [
    ...paragraph('  Logic of the trip', manner.width),
    ...sheetLines(logic as Sheet, alarmLogicSheet, manner, column),
  ];
}

/** Each wait from the level to the machine that stops, and all of them together against what is allowed. */
function responseLines({ stated }: PointAlarms, at: string, manner: Manner): readonly Line[] {
  const { response, delay, tripDelay } = stated;
  if (response === undefined) return [];
  const { total } = statedResponseTime(response, tripDelay ?? delay, at);
  const seconds = (value: number) => showQuantity('time', value, manner.showing);
  return [
    ...paragraph('  Time from the level to the stop', manner.width),
    ...sheetLines(response as Sheet, responseTimeSheet, manner, column),
    ...labelled('All, with delay', answerText(total, seconds), manner.width, '    ', column),
  ];
}
