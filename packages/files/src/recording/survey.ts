import { type Finding, notStated, type RecordedChannel, type Recording, said, si, stated } from '@soundpost/core';
import { type ChannelSurvey, ChannelWatch } from './channel-watch.ts';
import { rateAgainstTimes, timesCoarse, timesNotEven } from './contradictions.ts';
import { dataFindings } from './data-findings.ts';
import type { Block, OpenRecording } from './open-recording.ts';
import { TimeWatch } from './time-watch.ts';

export type { ChannelSurvey };

export interface Survey {
  /** With the lengths there are, and with every contradiction. */
  readonly recording: Recording;
  readonly channels: readonly ChannelSurvey[];
}

/** Reads the whole recording once, in blocks, and holds its data against its head. Throws Refusal. */
export async function surveyed(opened: OpenRecording): Promise<Survey> {
  const { recording } = opened;
  const watches = recording.channels.map(() => new ChannelWatch());
  const times: (TimeWatch | undefined)[] = watches.map(() => undefined);
  for await (const block of opened.blocks()) {
    for (const [index, watch] of watches.entries()) watch.see(block, index);
    seeTimes(block, times);
  }
  const seen = watches.map((each) => each.survey(opened.endsWhereEmpty === true));
  return {
    recording: {
      ...recording,
      channels: recording.channels.map((channel, index) =>
        settled(channel, seen[index]!, timesOf(recording, times, index)),
      ),
      findings: [
        ...recording.findings,
        ...recording.channels.flatMap((channel, index) => dataFindings(channel, seen[index]!, watches[index]!)),
        ...[...new Set(times)].flatMap((each) => (each === undefined ? [] : timeFindings(recording, times, each))),
      ],
    },
    channels: seen,
  };
}

/** Channels of one time column are watched by one. */
function seeTimes({ along = [] }: Block, times: (TimeWatch | undefined)[]): void {
  for (const [index, each] of along.entries()) {
    if (each === undefined) continue;
    const first = along.indexOf(each);
    times[index] ??= first < index ? times[first] : new TimeWatch();
    if (first === index) times[index]!.see(each);
  }
}

/** The times of a channel, where they are in seconds and it is sampled as the first channel of the same times is. */
function timesOf(
  { channels }: Recording,
  times: readonly (TimeWatch | undefined)[],
  index: number,
): TimeWatch | undefined {
  const watch = times[index];
  const { abscissa, rate } = channels[index]!;
  if (watch === undefined || abscissa?.of !== 'time' || abscissa.even) return undefined;
  const first = channels[times.indexOf(watch)]!.rate;
  return !first.known || !rate.known || first.value === rate.value ? watch : undefined;
}

/** A rate that the digits of its times leave open by more than this, relative, is none. */
const coarsest = 2e-3;

/** A hundredth of a per cent, or what the digits of the times allow. */
function disagrees(declared: number, times: TimeWatch): boolean {
  const { rate } = times;
  return rate !== undefined && Math.abs(declared / rate - 1) > Math.max(1e-4, times.uncertainty);
}

function settled(channel: RecordedChannel, seen: ChannelSurvey, times: TimeWatch | undefined): RecordedChannel {
  const counted = { ...channel, samples: seen.samples };
  if (times?.rate === undefined) return counted;
  if (!channel.rate.known) {
    if (times.uneven) return { ...counted, heard: { ...channel.heard, rate: 'its times are not even' } };
    if (times.uncertainty > coarsest) {
      return { ...counted, heard: { ...channel.heard, rate: 'its times are written too coarsely to tell it' } };
    }
    return { ...counted, rate: stated(si('frequency', times.rate), 'from its time column') };
  }
  if (!disagrees(channel.rate.value, times)) return counted;
  return {
    ...counted,
    rate: notStated,
    heard: {
      ...channel.heard,
      rate: 'its head and its time column differ; see the finding',
    },
  };
}

function timeFindings(
  { channels }: Recording,
  watches: readonly (TimeWatch | undefined)[],
  times: TimeWatch,
): readonly Finding[] {
  const first = channels[watches.indexOf(times)]!;
  if (first.abscissa?.of !== 'time') return [];
  const at = watches.every((each) => each === times) ? 'the time column' : `the times of ${first.of}`;
  return [
    ...(first.rate.known && disagrees(first.rate.value, times)
      ? [rateAgainstTimes(at, first.rate.value, times.rate!)]
      : []),
    ...(times.backwards === 0
      ? []
      : [timesNotEven(at, `go backwards, first at value ${times.firstBackwards}`, times.backwards)]),
    ...(times.jumps === 0
      ? []
      : [timesNotEven(at, said`are more than half off the usual one, first at value ${times.firstJump}`, times.jumps)]),
    ...(times.repeated === 0 ? [] : [timesCoarse(at, times.repeated)]),
  ];
}
