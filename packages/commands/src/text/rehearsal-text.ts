import {
  type Answer,
  type RehearsedMotion,
  showLevel,
  showNumber,
  showQuantity,
  type TargetSeen,
} from '@soundpost/core';
import type { RehearsedChain } from '../json/rehearsal-json.ts';
import { blank, heading, type Line, labelled, paragraph, plainLines } from '../layout/line.ts';
import { type Column, table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';
import { missingText } from './values-text.ts';

const contentColumns: readonly Column[] = [{ head: 'put in' }, { head: 'as' }, { head: 'where' }, { head: 'level' }];
const targetColumns: readonly Column[] = [
  { head: 'target' },
  { head: 'shown' },
  { head: 'against' },
  { head: 'dB', align: 'decimal' },
  { head: 'verdict' },
];

/** What was put in, and below it each chain with what an analyst sees through it. */
export function rehearsalLines(
  of: string,
  motion: Answer<RehearsedMotion>,
  chains: readonly RehearsedChain[],
  written: readonly string[],
  manner: Manner,
): readonly Line[] {
  const { width } = manner;
  if (!motion.known) {
    return [...heading(`Rehearsal: ${of}`, width), ...paragraph(`? ${missingText(motion.missing)}`, width)];
  }
  return [
    ...heading(`Rehearsal: ${of}`, width),
    ...paragraph('Made up from the design, not measured: it shows what the chain would do to such a motion.', width),
    ...contentLines(motion.value, manner),
    ...chains.flatMap((each) => [blank, ...chainLines(each, manner)]),
    ...(written.length === 0 ? [] : [blank, ...labelled('Written', written.join(', '), width, '', 14)]),
  ];
}

function contentLines({ contents, speed, reference }: RehearsedMotion, manner: Manner): readonly Line[] {
  const { showing, width } = manner;
  const hertz = (value: number) => showQuantity('frequency', value, showing);
  const rows = contents.map(({ name, by, frequency, band, level }) => [
    name,
    by,
    frequency === undefined
      ? band === undefined
        ? ''
        : `${hertz(band.low)} to ${hertz(band.high)}`
      : hertz(frequency.last),
    showLevel(level, showing),
  ]);
  const assumed = [...new Set(contents.flatMap((each) => each.assumed))];
  return [
    ...labelled('Speed', `${showQuantity('shaft speed', speed.last, showing)} of ${reference}`, width, '', 14),
    ...(rows.length === 0
      ? paragraph('  Nothing moves: what the record holds is the chain itself.', width, '  ')
      : plainLines(table(contentColumns, rows, width, '  '))),
    ...assumed.flatMap((each) => paragraph(`  ${each}`, width, '  ')),
  ];
}

function chainLines({ name, record, seen, standing }: RehearsedChain, manner: Manner): readonly Line[] {
  const { showing, width } = manner;
  const head = heading(name, width);
  if (!record.known) return [...head, ...paragraph(`  ? ${missingText(record.missing)}`, width, '  ')];
  if (!seen.known) return [...head, ...paragraph(`  ? ${missingText(seen.missing)}`, width, '  ')];
  const share = (value: number) => `${showNumber(100 * value, 3, showing.decimal)} %`;
  const { clippedShare, slewedShare, overRangeShare, beyondLimitShare } = record.value;
  const rows = seen.value.targets.map(({ target, seen: found }) =>
    found.known ? seenRow(found.value, manner) : [target, '', '', '', missingText(found.missing)],
  );
  return [
    ...head,
    ...(standing ? [] : plainLines(table(targetColumns, rows, width, '  '))),
    ...paragraph(
      `  Of the record, ${share(clippedShare)} at an end of the swing, ${share(slewedShare)} at the slew of the cable, ${share(overRangeShare)} at the range of the input, ${share(beyondLimitShare)} beyond a limit of the transducer.`,
      width,
      '  ',
    ),
  ];
}

function seenRow({ target, kind, found, against, decibels, seen }: TargetSeen, { showing }: Manner): readonly string[] {
  const verdict =
    kind === 'overall' ? (seen ? 'at or above its smallest' : 'below its smallest') : seen ? 'seen' : 'hidden';
  return [
    target,
    showLevel(found, showing),
    showLevel(against, showing),
    showNumber(decibels, 3, showing.decimal),
    verdict,
  ];
}
