import { rename } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { Refusal } from '@soundpost/core';
import { readBytes, writeWhole } from '@soundpost/store';
import type { Journal, Step } from './protocol.ts';
import { journalIn } from './protocol-reading.ts';

/** So many steps back and no more: the oldest are let go first. */
export const mostSteps = 1000;
const version = 1;
const largestJournal = 64 * 1024 * 1024;

export const noHistory: Journal = { steps: [], done: 0 };

/** What stands in the file beside the plant. */
interface Kept {
  readonly soundpost: 'journal';
  readonly version: number;
  /** The plant file this history belongs to, by the SHA-256 of its bytes. */
  readonly hash: string;
  /** The plant file before the last save: it may still stand there if the save was cut off behind the journal. */
  readonly previous?: { readonly hash: string; readonly done: number };
  readonly journal: Journal;
}

export function journalPath(plantPath: string): string {
  return join(dirname(plantPath), `.${basename(plantPath)}.journal.json`);
}

/**
 * The history that belongs to the plant file as it stands. One that belongs to other bytes, or cannot be read, is put
 * aside under another name and nothing is lost. Throws Refusal where a newer Soundpost wrote it.
 */
export async function readJournal(plantPath: string, hash: string, now: Date): Promise<Journal> {
  const path = journalPath(plantPath);
  const kept = await keptIn(path);
  if (kept === undefined) return noHistory;
  if (kept !== 'unreadable') {
    if (kept.hash === hash) return kept.journal;
    if (kept.previous?.hash === hash) return { ...kept.journal, done: kept.previous.done };
    if (kept.journal.steps.length === 0) return noHistory;
  }
  const stamp = now.toISOString().replaceAll(/[:.]/g, '-');
  await rename(path, path.replace(/\.json$/, `.${stamp}.json`));
  return noHistory;
}

/** Writes the history through to the disk. `hash` is that of the plant file it will belong to. */
export async function writeJournal(
  plantPath: string,
  hash: string,
  journal: Journal,
  before?: { hash: string; journal: Journal },
) {
  const capped = cappedAt(journal, mostSteps);
  const done = before === undefined ? undefined : doneBefore(before.journal, journal, capped);
  const kept: Kept = {
    soundpost: 'journal',
    version,
    hash,
    ...(before === undefined || done === undefined ? {} : { previous: { hash: before.hash, done } }),
    journal: capped,
  };
  await writeWhole(journalPath(plantPath), `${JSON.stringify(kept)}\n`, { overwrite: true });
}

/** The newest steps: those done are let go from the oldest on, then those undone from the last on. */
export function cappedAt({ steps, done }: Journal, most: number): Journal {
  const oldest = Math.min(Math.max(0, steps.length - most), done);
  return { steps: steps.slice(oldest, oldest + most), done: Math.min(done - oldest, most) };
}

/** How many of the new history's steps were done in the old file; undefined where the two do not belong together. */
function doneBefore(old: Journal, next: Journal, capped: Journal): number | undefined {
  const same = (a: readonly Step[], b: readonly Step[]): boolean => JSON.stringify(a) === JSON.stringify(b);
  const dropped = next.done - capped.done;
  if (old.done > next.steps.length || old.done < dropped || old.done - dropped > capped.steps.length) return undefined;
  return same(old.steps.slice(0, old.done), next.steps.slice(0, old.done)) ? old.done - dropped : undefined;
}

async function keptIn(path: string): Promise<Kept | 'unreadable' | undefined> {
  let bytes: Uint8Array;
  try {
    bytes = await readBytes(path, largestJournal);
  } catch (error) {
    if (error instanceof Refusal && error.reason.expected === 'a file that exists') return undefined;
    throw error;
  }
  let kept: unknown;
  try {
    kept = JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    return 'unreadable';
  }
  if (typeof kept !== 'object' || kept === null) return 'unreadable';
  const { soundpost, version: of, hash, previous, journal } = kept as Partial<Kept>;
  if (soundpost !== 'journal' || typeof of !== 'number' || typeof hash !== 'string') return 'unreadable';
  if (of > version) {
    throw new Refusal({
      read: `version ${of} of ${basename(path)}`,
      expected: `a history of at most version ${version}`,
      suggestion: 'A newer Soundpost wrote it. Use that one, or move the file away to begin a new history.',
    });
  }
  const read = journalIn(journal);
  if (read === undefined) return 'unreadable';
  const fits = typeof previous?.hash === 'string' && Number.isInteger(previous.done) && previous.done >= 0;
  const once = fits && previous.done <= read.steps.length ? { previous } : {};
  return { soundpost, version: of, hash, ...once, journal: read };
}
