import type { Finding } from '../finding/finding.ts';
import type { Missing } from '../quantity/answer.ts';
import type { Dimension } from '../quantity/dimension.ts';
import type { Frequency, QuantityName } from '../quantity/quantities.ts';
import type { Stated } from '../quantity/stated.ts';

/** What the numbers of a channel stand for, as written: times `factor`, plus `offset` where there is one, is coherent SI. */
export interface RecordedUnit {
  readonly written: string;
  readonly factor: number;
  readonly offset?: number;
  readonly dimension: Dimension;
  /** The quantity of the trade with this dimension, where there is one. */
  readonly quantity?: QuantityName;
}

/** What a channel may say of itself, in the order in which it is asked for. */
export const channelFacts = ['name', 'rate', 'unit', 'sensitivity', 'gain', 'coupling', 'speed'] as const;
export type ChannelFact = (typeof channelFacts)[number];

/** What the values of a channel stand along: time, frequency; evenly from `first` by `step`, or each with its own. */
export interface Abscissa {
  readonly of: 'time' | 'frequency' | 'rotational speed' | 'order' | 'unknown';
  readonly even: boolean;
  /** In coherent SI where `of` is known; 0 where uneven. */
  readonly first: number;
  readonly step: number;
}

/** One channel of a recording as its file describes it: what it does not say is unknown, never filled in. */
export interface RecordedChannel {
  /** What it is called here, for people: its name, or its number where it has none. */
  readonly of: string;
  readonly name: Stated<string>;
  /** Samples a second. */
  readonly rate: Stated<Frequency>;
  readonly unit: Stated<RecordedUnit>;
  /** As written: `100 mV/g`. */
  readonly sensitivity: Stated<string>;
  readonly gain: Stated<string>;
  readonly coupling: Stated<string>;
  /** Of the shaft while it was recorded, as written. */
  readonly speed: Stated<string>;
  /** Values that can be read: one number each, or a pair where complex. Undefined until the file has been read through. */
  readonly samples: number | undefined;
  /** Values its header claims, where it does. */
  readonly claimedSamples?: number;
  readonly complex: boolean;
  readonly abscissa?: Abscissa;
  /** Smallest step between two values that the form can hold, where the form says so. */
  readonly formStep?: number;
  /** What the file says about a fact that could not be taken as its answer, with the reason. */
  readonly heard: Readonly<Partial<Record<ChannelFact, string>>>;
}

/** Something else the file says, for people. */
export interface Remark {
  readonly name: string;
  readonly text: string;
}

/** What the file of a recording says, what it leaves open, and where it contradicts itself. */
export interface Recording {
  /** In words: `WAV, integers of 24 bits`. */
  readonly form: string;
  readonly channels: readonly RecordedChannel[];
  /** Date and time as written; the zone is part of it only where it stands there. */
  readonly start: Stated<string>;
  readonly remarks: readonly Remark[];
  readonly findings: readonly Finding[];
}

const asked: Readonly<Record<ChannelFact, string>> = {
  name: 'name: which point and direction',
  rate: 'sampling rate',
  unit: 'unit of the numbers',
  sensitivity: 'sensitivity',
  gain: 'gain',
  coupling: 'coupling, AC or DC',
  speed: 'speed of the shaft',
};

/**
 * Everything the recording does not say, each as a question. What several channels do not say is asked once for
 * them; what the file said but could not be taken stands with its question.
 */
export function questionsOf({ channels, start }: Recording): readonly Missing[] {
  const perFact = channelFacts.flatMap((fact) => {
    const silent = channels.filter((each) => !each[fact].known);
    const heard = [...new Set(silent.map((each) => each.heard[fact] ?? ''))];
    return heard.map((words) => {
      const alike = silent.filter((each) => (each.heard[fact] ?? '') === words);
      return { of: namesOf(alike, channels.length), what: question(fact, words) };
    });
  });
  if (start.known && /(?:z|utc|gmt|[+-]\d\d:?\d\d)$/i.test(start.value.trim())) return perFact;
  const what = start.known ? 'time zone of its start' : 'date, time and time zone of its start';
  return [...perFact, { of: 'the recording', what }];
}

function namesOf(alike: readonly RecordedChannel[], all: number): string {
  if (alike.length === all && all > 1) return all === 2 ? 'both channels' : `all ${all} channels`;
  const names = alike.slice(0, 4).map(({ of }) => of);
  return alike.length > 4 ? `${names.join('; ')} and ${alike.length - 4} more` : names.join('; ');
}

function question(fact: ChannelFact, heard: string): string {
  return heard === '' ? asked[fact] : `${asked[fact]} (${heard})`;
}
