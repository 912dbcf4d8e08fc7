import { sameDimension } from '../quantity/dimension.ts';
import { type Answer, answer, fromAll, type Motion, motions, quantities, unanswered } from '../quantity/index.ts';
import type { RecordedUnit } from '../signal/recording.ts';
import type { ChannelMeasures } from './channel-measures.ts';
import type { Occasion } from './occasion/kinds.ts';
import type { Service } from './session.ts';

/** How the direct voltage of a channel was treated before it was recorded. */
export const couplings = ['direct', 'alternating'] as const;
export type Coupling = (typeof couplings)[number];

/** What a channel of a recording is, as the file or the records file says it; what neither says is unknown. */
export interface ChannelStatement {
  readonly unit: Answer<RecordedUnit>;
  /** Output over motion that the recorder was told, V per SI unit; unknown where nobody says. */
  readonly sensitivity: Answer<number>;
  /** Numbers over volts at the input terminal, where the unit is a voltage: 10 behind an amplifier of ten. */
  readonly gain: Answer<number>;
  readonly coupling: Answer<Coupling>;
  /** Of the shaft that the point speaks of, in hertz. */
  readonly speed: Answer<number>;
}

/** Who says a fact of a channel. */
export const tellers = [
  'the recording',
  'the records file',
  'both',
  'the command line',
  'they differ',
  'nobody',
] as const;

/** A fact of a channel as it is written, and who says it. */
export interface ToldFact {
  readonly fact: string;
  /** As written; where the two differ, both. */
  readonly written: string;
  readonly by: (typeof tellers)[number];
}

/** A channel of a recording as it stands in the list of an acceptance. */
export interface RecordedChannelFacts {
  /** The name the records file gives it. */
  readonly name: string;
  /** The measuring point it is said to be, or what else it serves for. */
  readonly is: string;
  readonly samples: number;
  readonly rate: Answer<number>;
  readonly told: readonly ToldFact[];
}

/** A channel of a recording, and what was said of it. */
export interface RecordedHow {
  /** The file, as it was named. */
  readonly recording: string;
  readonly channel: string;
  readonly statement: ChannelStatement;
}

/** One channel of one recording, made at a point on an occasion: what was said of it, and what was measured of it. */
export interface MeasuredRecord extends RecordedHow {
  /** The measuring point it is said to be. */
  readonly at: string;
  readonly occasion: Occasion;
  readonly measures: ChannelMeasures;
  /** What makes the record itself doubtful, in words: it may show a fault, and proves nothing. */
  readonly doubts?: readonly string[];
}

/** A channel that is no measuring point and serves the others of its recording: the mark of each turn, a reference. */
export interface ServingChannel extends RecordedHow {
  /** What the records file calls it; `reference` of an occasion names it by this. */
  readonly name: string;
  readonly serves: Service;
  /** What it senses, where its numbers are volts. */
  readonly senses?: Motion;
  readonly measures: ChannelMeasures;
}

/** `tap.wav / channel 1`. */
export function recordName({ recording, channel }: Pick<RecordedHow, 'recording' | 'channel'>): string {
  return `${recording} / ${channel}`;
}

/**
 * Volts at the input terminal per recorded number in its SI unit: 1/gain where the numbers are volts, the sensitivity
 * that the recorder was told where they are a motion.
 */
export function voltsPerNumber(record: RecordedHow): Answer<number> {
  const { unit, gain, sensitivity } = record.statement;
  if (!unit.known) return unit;
  const { dimension } = unit.value;
  if (sameDimension(dimension, quantities.voltage.dimension)) return fromAll({ gain }, (known) => 1 / known.gain);
  if (motionOf(unit.value) !== undefined) return sensitivity;
  return unanswered([{ of: recordName(record), what: 'unit that is a voltage or a motion' }]);
}

/** The motion a channel is recorded as, where it is one. */
export function motionOf({ dimension }: RecordedUnit): Motion | undefined {
  return motions.find((motion) => sameDimension(dimension, quantities[motion].dimension));
}

/** Amperes per recorded number in its SI unit, of a channel that records a loop. */
export function amperesPerNumber(record: RecordedHow): Answer<number> {
  const { unit, gain } = record.statement;
  if (!unit.known) return unit;
  if (sameDimension(unit.value.dimension, quantities.current.dimension)) {
    return gain.known ? answer(1 / gain.value) : answer(1);
  }
  return unanswered([{ of: recordName(record), what: 'unit that is a current' }]);
}
