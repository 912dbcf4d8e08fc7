import { Refusal } from '@soundpost/core';
import { bytesInMemory } from './byte-source.ts';
import { openRecording } from './formats.ts';
import type { Block, ReadingChoices } from './open-recording.ts';
import { type Survey, surveyed } from './survey.ts';

/** For tests: everything in a recording at once, each channel as one array. */
export interface Whole extends Survey {
  readonly values: readonly (readonly number[])[];
  readonly imaginary: readonly (readonly number[])[];
  readonly along: readonly (readonly number[])[];
  /** Length of the longest array in any block. */
  readonly longestBlock: number;
}

export async function readWhole(bytes: Uint8Array, choices: ReadingChoices = {}, file = 'recording'): Promise<Whole> {
  const opened = await openRecording(bytesInMemory(bytes), file, choices);
  const channels = opened.recording.channels.map(() => ({
    value: [] as number[],
    imaginary: [] as number[],
    along: [] as number[],
  }));
  let longestBlock = 0;
  for await (const block of opened.blocks()) {
    longestBlock = Math.max(longestBlock, ...block.values.map(({ length }) => length));
    for (const [index, channel] of channels.entries()) add(channel, block, index);
  }
  return {
    ...(await surveyed(opened)),
    values: channels.map(({ value }) => value),
    imaginary: channels.map(({ imaginary }) => imaginary),
    along: channels.map(({ along }) => along),
    longestBlock,
  };
}

function add(channel: Readonly<Record<'value' | 'imaginary' | 'along', number[]>>, block: Block, index: number): void {
  for (const each of block.values[index]!) channel.value.push(each);
  for (const each of block.imaginary?.[index] ?? []) channel.imaginary.push(each);
  for (const each of block.along?.[index] ?? []) channel.along.push(each);
}

/** For tests: the sentence an attempt is refused with; any other error is one of ours. */
export async function refusedSaying(attempt: Promise<unknown>): Promise<string> {
  try {
    await attempt;
  } catch (error) {
    if (error instanceof Refusal) return error.message;
    throw error;
  }
  throw new Error('expected a Refusal, but it was read');
}

/** For tests: pieces as one. */
export function inOnePiece(pieces: Iterable<Uint8Array>): Uint8Array {
  const all = [...pieces];
  const whole = new Uint8Array(all.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of all) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

/** For tests: the rules that found something. */
export function rulesIn({ recording }: Survey): readonly string[] {
  return [...new Set(recording.findings.map(({ rule }) => rule.replace('recording/', '')))];
}
