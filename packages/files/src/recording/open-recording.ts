import { columnSeparators, type Recording, Refusal, type RefusalReason } from '@soundpost/core';
import type { ByteSource } from './byte-source.ts';

/** A run of samples: for each channel its own, fewer or none where the channel has ended before the others. */
export interface Block {
  /** How many samples of each channel that has not ended came before. */
  readonly from: number;
  readonly values: readonly Float64Array[];
  /** The imaginary parts of complex channels. */
  readonly imaginary?: readonly (Float64Array | undefined)[];
  /** Where along the abscissa each value stands, for channels whose file says it value by value: in coherent SI
   * where its unit is known (see the channel's `abscissa`), else as written. */
  readonly along?: readonly (Float64Array | undefined)[];
}

/** A recording whose head has been read: what it says, and its samples in blocks of bounded size, from the beginning. */
export interface OpenRecording {
  readonly recording: Recording;
  blocks(): AsyncIterable<Block>;
  /** A channel that holds nothing more up to the end has ended: its last values, written as none, are no samples. */
  readonly endsWhereEmpty?: true;
}

/** What the reader was told because the file leaves it open. */
export interface ReadingChoices {
  readonly decimal?: 'point' | 'comma';
  readonly separator?: Separator;
}

export const separators = columnSeparators;
export type Separator = (typeof separators)[number];

/** A file format of recordings. */
export interface RecordingFormat<Kind extends string = string> {
  readonly kind: Kind;
  readonly name: string;
  /** Whether the file is one of these, by its first bytes. */
  recognises(first: Uint8Array): boolean;
  /** Reads the head. Throws Refusal. */
  open(source: ByteSource, file: string, choices: ReadingChoices): Promise<OpenRecording>;
}

/** Samples of all channels together that one block holds at most. */
export const samplesInBlock = 65_536;

/** No recorder of the trade has more; a header that claims more is not believed. */
export const mostChannels = 1024;

export function framesInBlock(channels: number): number {
  return Math.max(1, Math.floor(samplesInBlock / channels));
}

/** A refusal that says where: `pump.wav, byte 36`. */
export function refusedAt(file: string, place: string, reason: RefusalReason): Refusal {
  const read = reason.read === '' ? 'nothing' : reason.read;
  return new Refusal({ ...reason, read: `${file}, ${place}: ${read}` });
}
