import {
  channelFacts,
  measured,
  questionsOf,
  type RecordedChannel,
  type Showing,
  showMeasure,
  showNumber,
} from '@soundpost/core';
import type { ChannelSurvey, Survey } from '@soundpost/files';
import { blank, heading, type Line, labelled, paragraph, plainLines } from '../layout/line.ts';
import { table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';
import { findingsLines } from './finding-text.ts';
import { counted } from './values-text.ts';

/** What a recording says, what it leaves open, and where it contradicts itself. */
export function recordingLines(path: string, survey: Survey, manner: Manner): readonly Line[] {
  const { recording, channels } = survey;
  const { width, showing } = manner;
  const rows = recording.channels.map((channel, index) => rowOf(channel, channels[index]!, showing));
  return [
    ...heading(path, width),
    ...labelled('Form', recording.form, width, '', 9),
    ...labelled('Start', recording.start.known ? recording.start.value : 'unknown', width, '', 9),
    ...recording.remarks.flatMap(({ name, text }) => labelled('', `${name}: ${text}`, width, '', 9)),
    blank,
    ...heading(counted(recording.channels.length, 'channel'), width),
    ...plainLines(table(columns, rows, width)),
    ...recording.channels.flatMap((channel) => statedLines(channel, manner)),
    ...openLines(survey, manner),
    ...(recording.findings.length === 0
      ? []
      : [blank, ...heading('Where it contradicts itself', width), ...findingsLines(recording.findings, manner)]),
  ];
}

const columns = [
  { head: 'Channel' },
  { head: 'Samples', align: 'right' },
  { head: 'Rate', align: 'right' },
  { head: 'Unit' },
  { head: 'Lowest', align: 'decimal' },
  { head: 'Highest', align: 'decimal' },
  { head: 'Mean', align: 'decimal' },
] as const;

function rowOf(channel: RecordedChannel, { samples, range }: ChannelSurvey, showing: Showing): readonly string[] {
  const number = (value: number) => showNumber(value, 4, showing.decimal);
  return [
    channel.of,
    String(samples),
    channel.rate.known ? showMeasure(measured('frequency', channel.rate.value, 6), showing) : '?',
    channel.unit.known ? channel.unit.value.written : '?',
    ...(range === undefined ? ['', '', ''] : [range.low, range.high, range.mean].map(number)),
  ];
}

/** What is stated beyond the table: sensitivity, gain, coupling, speed. */
function statedLines(channel: RecordedChannel, { width }: Manner): readonly Line[] {
  const facts = channelFacts.slice(3).flatMap((fact) => {
    const entry = channel[fact];
    return entry.known ? [`${fact} ${entry.written}`] : [];
  });
  return facts.length === 0 ? [] : paragraph(`  ${channel.of}: ${facts.join('; ')}`, width, '    ');
}

function openLines({ recording }: Survey, { width }: Manner): readonly Line[] {
  const questions = questionsOf(recording);
  if (questions.length === 0) return [];
  return [
    blank,
    ...heading('What it does not say, to be asked before anything is measured in it', width),
    ...questions.flatMap(({ of, what }) => paragraph(`  ? ${of}: ${what}`, width, '    ')),
  ];
}
