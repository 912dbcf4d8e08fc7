import { open, readdir, stat } from 'node:fs/promises';
import { basename, dirname } from 'node:path';
import { nearest, Refusal } from '@soundpost/core';
import type { Listing } from './listed-files.ts';
import { isUnfinished, takeUnfinishedAway } from './unfinished-file.ts';
import { type Content, codeOf, type Replacing, replaceWhole } from './whole-file.ts';
import { type Filled, replaceFolder } from './whole-folder.ts';

const mebibyte = 1024 * 1024;

/** The largest file that is read unless the caller allows more. */
export const largestRead = 16 * mebibyte;

/**
 * The bytes of a file. Its size is asked first, so that nothing too large is read; what is no plain file (a folder, a
 * pipe, a device) is not opened. Throws Refusal in words: no such file (with the name nearest to it), too large, not
 * readable.
 */
export async function readBytes(path: string, largest = largestRead): Promise<Uint8Array> {
  try {
    const { size } = refuseUnfit(path, await stat(path), largest);
    const file = await open(path, 'r');
    try {
      // It may have been exchanged or have grown since: the size is asked again of what is open now.
      refuseUnfit(path, await file.stat(), largest);
      const bytes = new Uint8Array(Math.min(size, largest) + 1);
      let length = 0;
      for (;;) {
        const { bytesRead } = await file.read(bytes, length, bytes.length - length);
        length += bytesRead;
        if (bytesRead === 0) return bytes.subarray(0, length);
        if (length > size) throw new Refusal({ read: path, expected: 'a file that does not grow while it is read' });
      }
    } finally {
      await file.close();
    }
  } catch (error) {
    throw await inWords(error, path, 'read');
  }
}

/** The text of a file is decoded by its reader; written text is always UTF-8. Throws Refusal in words. */
export async function writeWhole(
  path: string,
  content: Content,
  replacing: Replacing = { overwrite: false },
): Promise<void> {
  try {
    await replaceWhole(path, content, replacing);
    // A folder that is filled for the first time holds nothing left over.
    if (replacing.overwrite) await takeUnfinishedAway(dirname(path)).catch(() => undefined);
  } catch (error) {
    throw await inWords(error, path, 'written');
  }
}

/**
 * A folder as a whole, filled by `fill` under another name first; `listing` is the file that says what belongs to it.
 * Answers where it kept what did not belong to the folder before. Throws Refusal in words.
 */
export async function writeWholeFolder(
  path: string,
  listing: Listing,
  fill: (staged: string) => Promise<Filled>,
): Promise<string | undefined> {
  try {
    return await replaceFolder(path, listing, fill);
  } catch (error) {
    throw await inWords(error, path, 'written');
  }
}

export interface Stands {
  readonly size: number;
  isFile(): boolean;
  isDirectory(): boolean;
}

export function refuseUnfit(path: string, stands: Stands, largest: number): Stands {
  if (!stands.isFile()) {
    throw new Refusal({
      read: path,
      expected: 'a file',
      suggestion: stands.isDirectory() ? 'It is a folder.' : 'It is a device or a pipe.',
    });
  }
  if (stands.size > largest) {
    throw new Refusal({
      read: path,
      expected: `a file of at most ${inMebibytes(largest)}`,
      suggestion: `It has ${inMebibytes(stands.size)}. Is it the right file?`,
    });
  }
  return stands;
}

function inMebibytes(bytes: number): string {
  return bytes < mebibyte ? `${bytes} bytes` : `${(bytes / mebibyte).toFixed(1)} MiB`;
}

const words: Readonly<Record<string, { readonly expected: string; readonly suggestion: string }>> = {
  EEXIST: { expected: 'a name that is not taken', suggestion: 'A file stands there; say so if it is to be replaced.' },
  ECHANGED: {
    expected: 'a file that stands still while it is worked on',
    suggestion: 'Another program changed it meanwhile; what it wrote is left as it is. Look at it, and try again.',
  },
  EISDIR: { expected: 'a file', suggestion: 'It is a folder.' },
  ENOTDIR: { expected: 'a path through folders', suggestion: 'A part of the path is a file.' },
  EACCES: { expected: 'a file that may be used', suggestion: 'The permissions of the file or its folder forbid it.' },
  EPERM: { expected: 'a file that may be used', suggestion: 'The permissions of the file or its folder forbid it.' },
  EROFS: { expected: 'a folder that can be written', suggestion: 'The disk is read-only.' },
  ENOSPC: { expected: 'room on the disk', suggestion: 'The disk is full; what stood there before is unharmed.' },
  EDQUOT: { expected: 'room on the disk', suggestion: 'The quota is used up; what stood there before is unharmed.' },
  ENAMETOOLONG: { expected: 'a shorter name', suggestion: 'The file system does not take names of this length.' },
  ELOOP: { expected: 'a file', suggestion: 'Its links lead in a circle.' },
};

export async function inWords(error: unknown, path: string, done: 'read' | 'written'): Promise<unknown> {
  if (error instanceof Refusal) return error;
  const code = codeOf(error);
  if (code === 'ENOENT') return new Refusal({ read: path, ...(await missing(path, done)) });
  const reason = words[code];
  return reason === undefined ? error : new Refusal({ read: path, ...reason });
}

async function missing(path: string, done: 'read' | 'written') {
  const names = await readdir(dirname(path)).catch(() => undefined);
  if (names === undefined) return { expected: 'a folder that exists', suggestion: `There is no '${dirname(path)}'.` };
  const near = nearest(
    basename(path),
    names.slice(0, 1000).filter((name) => !isUnfinished(name)),
  );
  const expected = done === 'read' ? 'a file that exists' : 'a place that can be written';
  return near === undefined ? { expected } : { expected, suggestion: `Did you mean '${near}'?` };
}
