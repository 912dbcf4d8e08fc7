import {
  type Finding,
  notStated,
  type QuantityName,
  type RecordedChannel,
  type Recording,
  said,
  si,
  stated,
} from '@soundpost/core';
import {
  lengthAgainstFile,
  notNumbers,
  rateAgainstTimes,
  timesCoarse,
  timesNotEven,
  unitAgainstStep,
} from './contradictions.ts';
import type { Block, OpenRecording } from './open-recording.ts';
import { type Steps, stepsOf } from './steps.ts';
import { TimeWatch } from './time-watch.ts';

/** What the values of one channel are like, in its own unit. */
export interface ChannelSurvey {
  readonly samples: number;
  readonly notNumbers: number;
  /** Of the finite values; absent where there are none. */
  readonly range?: { readonly low: number; readonly high: number; readonly mean: number };
  /** Smallest step between neighbouring levels among the first values, where there is one. */
  readonly step?: number;
}

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
        ...recording.channels.flatMap((channel, index) => dataFindings(channel, seen[index]!, watches[index]!.steps)),
        ...[...new Set(times)].flatMap((each) => (each === undefined ? [] : timeFindings(recording, times, each))),
      ],
    },
    channels: seen,
  };
}

class ChannelWatch {
  steps: Steps | undefined;
  #count = 0;
  #lastFinite = 0;
  #finite = 0;
  #low = Number.POSITIVE_INFINITY;
  #high = Number.NEGATIVE_INFINITY;
  #mean = 0;

  see(block: Block, index: number): void {
    const values = block.values[index]!;
    const imaginary = block.imaginary?.[index];
    this.steps ??= values.length === 0 ? undefined : stepsOf(values.subarray(0, 8192));
    for (let at = 0; at < values.length; at++) {
      const value = values[at]!;
      this.#count++;
      if (!Number.isFinite(value) || (imaginary !== undefined && !Number.isFinite(imaginary[at]))) continue;
      this.#finite++;
      this.#lastFinite = this.#count;
      if (value < this.#low) this.#low = value;
      if (value > this.#high) this.#high = value;
      this.#mean += (value - this.#mean) / this.#finite;
    }
  }

  survey(endsWhereEmpty: boolean): ChannelSurvey {
    const samples = endsWhereEmpty && this.#finite > 0 ? this.#lastFinite : this.#count;
    const step = this.steps?.smallest;
    return {
      samples,
      notNumbers: samples - this.#finite,
      ...(this.#finite === 0 ? {} : { range: { low: this.#low, high: this.#high, mean: this.#mean } }),
      ...(step === undefined ? {} : { step }),
    };
  }
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

/** What a converter gives as fractions of a unit. A speed, a time or a temperature may well be in whole numbers. */
const fromConverter: ReadonlySet<QuantityName | undefined> = new Set<QuantityName>([
  'acceleration',
  'velocity',
  'displacement',
  'voltage',
  'current',
  'force',
]);

function dataFindings(channel: RecordedChannel, seen: ChannelSurvey, steps: Steps | undefined): readonly Finding[] {
  const { of, claimedSamples, samples, unit } = channel;
  const promised = samples ?? claimedSamples;
  return [
    ...(promised !== undefined && promised !== seen.samples
      ? [lengthAgainstFile(of, 'samples', promised, seen.samples)]
      : []),
    ...(seen.notNumbers === 0 ? [] : [notNumbers(of, seen.notNumbers, seen.samples)]),
    ...(unit.known && steps !== undefined && fromConverter.has(unit.value.quantity)
      ? stepFindings(of, unit.value.written, steps)
      : []),
  ];
}

function stepFindings(of: string, unit: string, { distinct, whole, shareOfFullScale }: Steps): readonly Finding[] {
  // A handful of levels, as of a switch or a pulse, says nothing of a converter.
  if (distinct < 32) return [];
  if (whole) return [unitAgainstStep(of, unit, 'every value is a whole number', 'counts of a converter')];
  if (shareOfFullScale === undefined) return [];
  const found = `every value is a multiple of 1/${2 ** shareOfFullScale} and none is beyond 1`;
  return [unitAgainstStep(of, unit, found, 'shares of full scale')];
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
