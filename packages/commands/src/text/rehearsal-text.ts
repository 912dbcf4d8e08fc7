import {
  type Answer,
  type AsSeen,
  type DefectStatement,
  defectKinds,
  level,
  type RehearsedMotion,
  type RehearsedRecord,
  showLevel,
  showNumber,
  showQuantity,
  type TargetSeen,
} from '@soundpost/core';
import type { RehearsedChain } from '../json/rehearsal-json.ts';
import { blank, heading, type Line, labelled, paragraph, plainLines } from '../layout/line.ts';
import { type Column, table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';
import type { DetectionRow } from '../rehearse/detection.ts';
import { bandText, missingText } from './values-text.ts';

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
  detection: Detection | undefined,
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
    ...(detection === undefined ? [] : [blank, ...detectionLines(detection, manner)]),
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
      : alongWords(frequency, hertz),
    showLevel(level, showing),
  ]);
  const assumed = [...new Set(contents.flatMap((each) => each.assumed))];
  return [
    ...labelled(
      'Speed',
      `${alongWords(speed, (value) => showQuantity('shaft speed', value, showing))} of ${reference}`,
      width,
      '',
      14,
    ),
    ...(rows.length === 0
      ? paragraph('  Nothing moves: what the record holds is the chain itself.', width, '  ')
      : plainLines(table(contentColumns, rows, width, '  '))),
    ...assumed.flatMap((each) => paragraph(`  ${each}`, width, '  ')),
  ];
}

function alongWords(
  { first, last }: { readonly first: number; readonly last: number },
  shown: (value: number) => string,
): string {
  return first === last ? shown(last) : `${shown(first)} to ${shown(last)}`;
}

function chainLines({ name, defects, record, seen, standing }: RehearsedChain, manner: Manner): readonly Line[] {
  const { showing, width } = manner;
  const wrong = defects.map(defectWords);
  const head = [
    ...heading(name, width),
    ...(wrong.length === 0 ? [] : labelled('Wrong with it', wrong.join('; '), width, '  ', 16)),
  ];
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
    ...envelopeLines(seen.value, manner),
    ...overallLines(seen.value, record.value, manner),
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

/** `Loose mount (mounted resonance over the designed: 0.3)`. */
function defectWords({ kind: word, size }: DefectStatement): string {
  const kind = defectKinds.find((each) => each.kind === word);
  if (kind === undefined) return word;
  return `${kind.name} (${kind.sized}: ${showQuantity(kind.quantity, size ?? kind.usual)})`;
}

const envelopeColumns: readonly Column[] = [
  { head: 'in the envelope' },
  { head: 'where' },
  { head: 'dB', align: 'decimal' },
  { head: 'harmonics' },
  { head: 'verdict' },
];

function envelopeLines({ envelope }: AsSeen, { showing, width }: Manner): readonly Line[] {
  if (!envelope.known) return paragraph(`  Envelope: ${missingText(envelope.missing)}.`, width, '  ');
  const { band, because, lines } = envelope.value;
  const rows = lines.map(({ name, frequency, decibels, harmonics, lookedFor, seen }) => [
    name,
    showQuantity('frequency', frequency, showing),
    showNumber(decibels, 3, showing.decimal),
    `${harmonics} of ${lookedFor}`,
    seen ? 'seen' : 'hidden',
  ]);
  return [
    ...paragraph(`  Envelope of ${bandText(band, showing)}. ${because}`, width, '  '),
    ...(rows.length === 0 ? [] : plainLines(table(envelopeColumns, rows, width, '  '))),
  ];
}

function overallLines({ overall }: AsSeen, { senses, loop }: RehearsedRecord, manner: Manner): readonly Line[] {
  if (!overall.known || loop !== undefined) return [];
  const { showing, width } = manner;
  const { acRms, peak, crest, kurtosis } = overall.value;
  const number = (value: Answer<number>) => (value.known ? showNumber(value.value, 3, showing.decimal) : '?');
  return paragraph(
    `  Whole record: ${showLevel(level(senses, acRms, 'rms'), showing)}, ${showLevel(level(senses, peak, 'peak'), showing)}, crest factor ${number(crest)}, kurtosis ${number(kurtosis)}.`,
    width,
    '  ',
  );
}

export interface Detection {
  readonly what: string;
  readonly rows: readonly DetectionRow[];
}

/** How often it is seen at each size, with the interval of Clopper and Pearson. */
function detectionLines({ what, rows }: Detection, { showing, width }: Manner): readonly Line[] {
  const [first] = rows;
  const percent = (value: number) => showNumber(100 * value, 3, showing.decimal);
  const columns: readonly Column[] = [
    { head: 'fault' },
    ...first!.chains.map(({ name }) => ({ head: `${name}: seen, with its interval of 95 %` })),
  ];
  const cells = rows.map(({ size, chains }) => [
    size === undefined ? 'healthy' : showLevel(size, showing),
    ...chains.map(
      ({ seen }) =>
        `${seen.happened} of ${seen.of}: ${percent(seen.share)} % (${percent(seen.low)} to ${percent(seen.high)} %)`,
    ),
  ]);
  return [
    ...heading(`How often '${what}' is seen`, width),
    ...plainLines(table(columns, cells, width, '  ')),
    ...paragraph('  What is seen on the healthy machine is there without the fault.', width, '  '),
  ];
}
