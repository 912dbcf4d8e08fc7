import {
  type Acceptance,
  type AcceptedRecording,
  type HandedBack,
  type Identified,
  type JudgementChange,
  type Missing,
  type PointHandedBack,
  showQuantity,
  showSpan,
  valueIfStated,
} from '@soundpost/core';
import { blank, bullet, grave, heading, type Line, paragraph, plainLines } from '../layout/line.ts';
import { type Column, table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';
import { comparisonLines, notProvenLines } from './comparison-text.ts';
import { findingsLines } from './finding-text.ts';
import { marginText, shortRule } from './judgement-text.ts';
import { counted } from './values-text.ts';

/** An acceptance from top to bottom: what was recorded, what it says, what it tells of the chains, what is left open. */
export function acceptanceLines(accepted: Acceptance, manner: Manner): readonly Line[] {
  return [
    ...headLines(accepted, manner),
    ...comparisonLines(accepted.compared, manner),
    ...identifiedLines(accepted.identified, manner),
    ...handedBackLines(accepted.handedBack, manner),
    ...notProvenLines(accepted.compared, manner),
    ...(accepted.findings.length === 0
      ? []
      : [
          blank,
          ...heading('What the recordings contradict', manner.width),
          ...findingsLines(accepted.findings, manner),
        ]),
    ...questionLines(accepted.questions, manner),
  ];
}

const recordingColumns: readonly Column[] = [
  { head: 'recording' },
  { head: 'file' },
  { head: 'bytes', align: 'right' },
  { head: 'SHA-256' },
];

function headLines({ session, recordings }: Acceptance, { width }: Manner): readonly Line[] {
  const row = ({ name, file, bytes, sha256 }: AcceptedRecording) => [
    name,
    file,
    sha256 === '' ? '' : String(bytes),
    sha256 === '' ? 'not read' : `${sha256.slice(0, 12)}…`,
  ];
  return [
    ...heading(`Acceptance from recordings: ${valueIfStated(session.head.values.title) ?? 'without a title'}`, width),
    ...plainLines(table(recordingColumns, recordings.map(row), width, '  ')),
    ...recordings.flatMap(({ name, refused }) =>
      refused === undefined ? [] : grave(`  ✗ ${name}: ${refused}`, width, '    '),
    ),
  ];
}

const identifiedColumns: readonly Column[] = [
  { head: 'property' },
  { head: 'part' },
  { head: 'found' },
  { head: '95 %' },
  { head: 'predicted' },
  { head: 'standing' },
];

const standingMarks: Readonly<Record<Identified['standing'], string>> = {
  'as designed': '✓ as designed',
  off: '✗ off',
  'cannot tell': '? cannot tell',
};

function identifiedLines(identified: readonly Identified[], { width, showing }: Manner): readonly Line[] {
  if (identified.length === 0) return [];
  const points = [...new Set(identified.map(({ at }) => at))];
  const row = ({ title, of, part, quantity, value, interval, predicted, standing }: Identified) => [
    of === undefined ? title : `${title}, ${of}`,
    part,
    showQuantity(quantity, value, showing),
    showSpan(quantity, interval as never, showing),
    showQuantity(quantity, predicted, showing),
    standingMarks[standing],
  ];
  return [
    blank,
    ...heading('The chains as identified from the records', width),
    ...points.flatMap((at) => [
      ...paragraph(`  ${at}`, width, '  '),
      ...plainLines(table(identifiedColumns, identified.filter((each) => each.at === at).map(row), width, '    ')),
    ]),
  ];
}

function handedBackLines({ verdict, points }: HandedBack, manner: Manner): readonly Line[] {
  const { width, showing } = manner;
  if (points.length === 0) return [];
  const pointLines = ({ at, outcome, margin, changes }: PointHandedBack) => [
    ...paragraph(
      `  ${at}: ${outcome.before}, least margin ${marginText(margin.before, showing)}; with what was measured ${outcome.after}, ${marginText(margin.after, showing)}`,
      width,
      '    ',
    ),
    ...changes.flatMap((each) => bullet(changeText(each, manner), width, '    ')),
  ];
  return [
    blank,
    ...heading('Handed back to the design', width),
    ...paragraph(
      `  Measured values in place of the predicted ones, judged by the same rules. Verdict of the design before: ${verdict.before}; after: ${verdict.after}.`,
      width,
      '  ',
    ),
    ...points.flatMap(pointLines),
  ];
}

function changeText({ rule, target, before, after, turned }: JudgementChange, { showing }: Manner): string {
  const side = (judged: typeof before) =>
    judged === undefined
      ? 'not judged'
      : `${judged.outcome}${judged.margin === undefined ? '' : `, ${marginText(judged.margin, showing)}`}`;
  return `${target === undefined ? 'the chain' : target}, ${shortRule(rule)}: ${side(before)} → ${side(after)}${turned ? ' (turned)' : ''}`;
}

/** Several recordings with the same question are named in one line. */
function questionLines(questions: readonly Missing[], { width }: Manner): readonly Line[] {
  if (questions.length === 0) return [];
  const whats = [...new Set(questions.map(({ what }) => what))];
  return [
    blank,
    ...heading('Asked, since neither the recording nor the records file says it', width),
    ...whats.flatMap((what) => {
      const of = questions.filter((each) => each.what === what).map((each) => each.of);
      const named =
        of.length <= 4 ? of.join('; ') : `${of.slice(0, 3).join('; ')} and ${counted(of.length - 3, 'other')}`;
      return bullet(`${what}: ${named}`, width, '  ', '?');
    }),
    ...paragraph(
      "  Answer in the records file: 'rate' and 'start' under the recording, the rest under the channel.",
      width,
      '  ',
    ),
  ];
}
