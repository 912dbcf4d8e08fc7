import { type PointAlarms, showLevel, showMeasure, showNumber, showQuantity } from '@soundpost/core';
import { type Line, paragraph, plainLines } from '../layout/line.ts';
import { type Column, table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';
import { cellText, distinctMissing, missingText } from './values-text.ts';

/** The register of alarms as they are set and read: engineering unit, loop, card. */
export function alarmLines(alarms: PointAlarms, { showing, width }: Manner): readonly Line[] {
  const onLoop = alarms.register.some((row) => row.current !== undefined);
  const onCard = alarms.register.some((row) => row.counts !== undefined);
  const columns: Column[] = [
    { head: 'alarm' },
    { head: 'level' },
    ...(onLoop ? [{ head: 'loop, mA', align: 'decimal' } as const] : []),
    ...(onCard ? [{ head: 'counts', align: 'right' } as const] : []),
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
    row.delay === undefined ? '' : row.delay.known ? showQuantity('time', row.delay.value, showing) : '?',
    showMeasure(row.because, showing),
  ]);
  const missing = alarms.register.flatMap((row) =>
    [row.level, row.current, row.counts].flatMap((each) => (each === undefined || each.known ? [] : each.missing)),
  );
  return [
    ...plainLines(table(columns, rows, width, '  ')),
    ...(missing.length === 0 ? [] : paragraph(`  ? ${missingText(distinctMissing(missing))}`, width, '  ')),
  ];
}
