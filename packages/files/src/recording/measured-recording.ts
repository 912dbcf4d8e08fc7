import {
  type ChannelMeasures,
  channelMeasures,
  type Finding,
  type MeasuredRecord,
  type Missing,
  pointDecimals,
  questionsOf,
  type RecordedChannelFacts,
  Refusal,
  type ServingChannel,
  type StatedChannel,
  type StatedRecording,
  type Writing,
} from '@soundpost/core';
import { channelFacts, type FallbackAnswers } from './channel-facts.ts';
import { longerThanMeasured } from './contradictions.ts';
import type { OpenRecording } from './open-recording.ts';
import { surveyed } from './survey.ts';

/** What was measured of one recording, and what stands in its way. */
export interface MeasuredRecording {
  readonly records: readonly MeasuredRecord[];
  readonly serving: readonly ServingChannel[];
  readonly channels: readonly RecordedChannelFacts[];
  /** In words: `WAV, integers of 24 bits`. */
  readonly form: string;
  readonly start: string | undefined;
  readonly findings: readonly Finding[];
  /** What neither the recording nor the records file says. */
  readonly questions: readonly Missing[];
}

/** Samples of a channel that are measured, from its beginning: 22 minutes at 51.2 kHz. What lies behind is surveyed only. */
export const mostMeasured = 2 ** 26;

/**
 * Reads a recording twice from end to end in blocks: once to hold its head against its data, once to measure every
 * channel that the records file names. Throws Refusal.
 */
export async function measuredRecording(
  opened: OpenRecording,
  stated: StatedRecording,
  writing: Writing = pointDecimals,
  fallback: FallbackAnswers = {},
  most = mostMeasured,
): Promise<MeasuredRecording> {
  const survey = await surveyed(opened);
  const named = stated.channels.map((channel) => {
    const index = placeOf(channel, survey.recording.channels, stated.file);
    const described = survey.recording.channels[index]!;
    const facts = channelFacts(described, stated, channel, writing, fallback);
    const factor = facts.statement.unit.known ? facts.statement.unit.value : undefined;
    return {
      channel,
      index,
      facts,
      factor: factor?.factor ?? 1,
      offset: factor?.offset ?? 0,
      gathering: channelMeasures({
        rate: facts.rate,
        samples: described.samples === undefined ? undefined : Math.min(described.samples, most),
      }),
    };
  });
  for await (const { from, values } of opened.blocks()) {
    if (from >= most) break;
    for (const { index, factor, offset, gathering } of named) {
      const block = values[index]!.subarray(0, most - from);
      gathering.take(factor === 1 && offset === 0 ? block : block.map((value) => value * factor + offset));
    }
  }
  const records = named.map(({ channel, index, facts, gathering }) => ({
    channel,
    record: recordOf(stated, channel, facts.statement, gathering.result(), doubtsOf(survey.recording, index, stated)),
  }));
  return {
    records: records.flatMap(({ channel, record }) => (channel.point === undefined ? [] : [record])),
    serving: records.flatMap(({ channel: { name, serves }, record: { recording, channel, statement, measures } }) =>
      serves === undefined ? [] : [{ name, serves, recording, channel, statement, measures }],
    ),
    channels: records.map(({ channel, record }, index) => ({
      name: channel.name,
      is: channel.point ?? channel.serves ?? '',
      samples: record.measures.samples,
      rate: record.measures.rate,
      told: named[index]!.facts.told,
    })),
    form: survey.recording.form,
    start: startOf(survey.recording, stated),
    findings: [
      ...survey.recording.findings.map((each) => ofRecording(each, stated)),
      ...named.flatMap(({ facts }) => facts.findings),
      ...measuredInPart(survey.recording, stated.name, most),
    ],
    questions: questionsLeft(survey.recording, stated, named),
  };
}

function recordOf(
  stated: StatedRecording,
  channel: StatedChannel,
  statement: MeasuredRecord['statement'],
  measures: ChannelMeasures,
  doubts: readonly string[],
): MeasuredRecord {
  return {
    recording: stated.name,
    channel: channel.name,
    at: channel.point ?? '',
    occasion: stated.occasion,
    statement,
    measures,
    ...(doubts.length === 0 ? {} : { doubts }),
  };
}

/** By its number from 1, or by its name in the recording. Throws Refusal. */
function placeOf({ channel, name }: StatedChannel, channels: readonly { readonly of: string }[], file: string): number {
  const byName = channels.findIndex(({ of }) => of === channel);
  if (byName >= 0) return byName;
  const number = /^\d{1,4}$/.test(channel) ? Number(channel) : Number.NaN;
  if (number >= 1 && number <= channels.length) return number - 1;
  const names = channels.slice(0, 8).map(({ of }, index) => `${index + 1} (${of})`);
  throw new Refusal({
    read: `channel ${channel} (${name}) of ${file}`,
    expected: `a channel of the recording: ${names.join(', ')}${channels.length > 8 ? ' …' : ''}`,
  });
}

/** What is asked about the recording and no answer was given to. */
function questionsLeft(
  recording: Parameters<typeof questionsOf>[0],
  stated: StatedRecording,
  named: readonly { readonly facts: ReturnType<typeof channelFacts> }[],
): readonly Missing[] {
  const answers = named.flatMap(({ facts: { rate, statement } }) => [
    rate,
    statement.unit,
    statement.gain,
    statement.coupling,
  ]);
  const left = answers.flatMap((each) => (each.known ? [] : each.missing));
  const start = stated.answers.values.start?.known === true ? [] : startAsked(recording, stated.name);
  return [...new Map([...left, ...start].map((each) => [`${each.of}/${each.what}`, each])).values()];
}

/** A date and time without its zone is one of many; the records file answers it with `start`. */
function startAsked(recording: Parameters<typeof questionsOf>[0], name: string): readonly Missing[] {
  return questionsOf(recording)
    .filter(({ of }) => of === 'the recording')
    .map((each) => ({ ...each, of: name }));
}

function startOf({ start }: Parameters<typeof questionsOf>[0], { answers }: StatedRecording): string | undefined {
  const answered = answers.values.start;
  if (answered?.known === true) return String(answered.value);
  return start.known ? start.value : undefined;
}

/** A finding of a file with the name of its recording; what the records file answers is a question no more. */
function ofRecording(found: Finding, { name, answers }: StatedRecording): Finding {
  const { asks, ...rest } = found;
  const at = found.at === 'the recording' ? name : `${name} / ${found.at}`;
  const answered = found.rule === 'recording/rate-against-time-column' && answers.values.rate?.known === true;
  if (!answered) return { ...found, at };
  return { ...rest, at, weight: 'warns' };
}

const doubtful: Readonly<Record<string, string>> = {
  'recording/settled': 'it settles over its whole length',
  'recording/no-standstill': 'it stands still for a stretch',
  'recording/bytes-in-order': 'its bytes look exchanged',
};

function doubtsOf(
  { channels, findings }: Parameters<typeof questionsOf>[0],
  index: number,
  { occasion }: StatedRecording,
): readonly string[] {
  const own = findings.filter(({ at }) => at === channels[index]!.of).map(({ rule }) => rule);
  // A direct voltage may well rest between two steps of its recorder.
  const dead = occasion.kind !== 'at-rest' && own.includes('recording/values-move') ? ['it never moves'] : [];
  return [...dead, ...own.flatMap((rule) => doubtful[rule] ?? [])];
}

function measuredInPart(
  { channels }: Parameters<typeof questionsOf>[0],
  name: string,
  most: number,
): readonly Finding[] {
  const longest = Math.max(...channels.map(({ samples }) => samples ?? 0));
  return longest <= most ? [] : [longerThanMeasured(name, longest, most)];
}
