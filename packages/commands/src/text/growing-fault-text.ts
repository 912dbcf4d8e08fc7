import {
  type FaultAlarm,
  type GrowingFault,
  type Level,
  showLevel,
  showMeasure,
  showNumber,
  showQuantity,
} from '@soundpost/core';
import { bullet, heading, type Line, paragraph, plainLines } from '../layout/line.ts';
import { type Column, table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';
import { findingsLines } from './finding-text.ts';
import { answerText, cellText, distinctMissing, missingText, sentence } from './values-text.ts';

/** One target that grows, and what each alarm does about it. */
export function growingFaultLines(fault: GrowingFault, manner: Manner): readonly Line[] {
  const { showing, width } = manner;
  const { target, from, to, frequency, days, alarms, record, notes } = fault;
  const time = days === 1 ? 'one day' : `${showNumber(days, 6, showing.decimal)} days`;
  const missing = alarms.flatMap(({ acts }) => (acts.known ? [] : acts.missing));
  const grows = `from ${showLevel(from, showing)} to ${showLevel(to, showing)} at ${showQuantity('frequency', frequency, showing)} in ${time}, by a constant factor a day`;
  return [
    ...heading(`${target}: ${grows}`, width),
    ...notes.flatMap((note) => paragraph(`  ${showMeasure(note, showing)}`, width)),
    ...plainLines(
      table(
        columns,
        alarms.map((each) => rowOf(each, manner)),
        width,
        '  ',
      ),
    ),
    ...(alarms.length === 0 ? paragraph('  No alarm of this point acts on anything.', width) : []),
    ...(missing.length === 0 ? [] : paragraph(`  ? ${missingText(distinctMissing(missing))}`, width, '  ')),
    ...neverLines(alarms, manner),
    ...seenLines(fault, manner),
    ...(record.findings.length === 0 ? [] : findingsLines(record.findings, manner)),
  ];
}

const columns: readonly Column[] = [
  { head: 'alarm' },
  { head: 'level' },
  { head: 'acts on day', align: 'decimal' },
  { head: 'by tolerance' },
  { head: 'motion itself', align: 'decimal' },
  { head: 'lasting' },
  { head: 'shown at end' },
];

function rowOf({ row, acts }: FaultAlarm, { showing }: Manner): readonly string[] {
  const day = (value: number | undefined) => (value === undefined ? 'never' : showNumber(value, 3, showing.decimal));
  return [
    row.name,
    cellText(row.level, (level) => showLevel(level, showing)),
    cellText(acts, (known) => day(known.day)),
    cellText(acts, ({ earliest, latest }) =>
      earliest === latest ? day(earliest) : `${day(earliest)}..${day(latest)}`,
    ),
    cellText(acts, (known) => day(known.trueDay)),
    row.delay === undefined ? '' : row.delay.known ? showQuantity('time', row.delay.value, showing) : '?',
    cellText(acts, ({ atEnd: { indicated } }) => showLevel(withoutBand(indicated), showing)),
  ];
}

function withoutBand({ quantity, value, detector }: Level): Level {
  return { quantity, value, detector };
}

/** Why alarms never act; those of one reason together. */
function neverLines(alarms: readonly FaultAlarm[], { showing, width }: Manner): readonly Line[] {
  const byReason = new Map<string, string[]>();
  for (const { row, never } of alarms) {
    if (never === undefined) continue;
    const reason = showMeasure(never, showing);
    byReason.set(reason, [...(byReason.get(reason) ?? []), row.name]);
  }
  return [...byReason].flatMap(([reason, names]) =>
    bullet(`${names.join(' and ')} never ${names.length === 1 ? 'acts' : 'act'}: ${sentence(reason)}`, width),
  );
}

/** When whoever looks at the spectrum sees it; only where the chain passes a signal on. */
function seenLines({ target, record }: GrowingFault, { showing, width }: Manner): readonly Line[] {
  if (record.seen.known && record.seen.value.length === 0) return [];
  const text = answerText(record.seen, (parts) => {
    const day = parts.find(({ part }) => part === target)?.day;
    return day === undefined
      ? 'It never stands out of the noise of its line.'
      : `In the spectrum it stands out of the noise from day ${showNumber(day, 3, showing.decimal)}.`;
  });
  return bullet(text, width);
}
