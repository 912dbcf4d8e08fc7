import { readSync } from 'node:fs';
import { type FileHandle, open, stat } from 'node:fs/promises';
import { inWords, refuseUnfit } from './folder.ts';

/** A file that stays where it is and is read in pieces. */
export interface OpenBytes {
  readonly size: number;
  /** The bytes from a place on; fewer than asked for only where the file ends. */
  read(from: number, length: number): Promise<Uint8Array>;
  /** The same without waiting; errors are those of the system. */
  readNow(from: number, length: number): Uint8Array;
  close(): Promise<void>;
}

/** Opens a file of any size to be read in pieces. Throws Refusal in words: no such file, a folder, a pipe, not readable. */
export async function openBytes(path: string): Promise<OpenBytes> {
  try {
    // A pipe would wait for its other end: what is no plain file is not opened.
    refuseUnfit(path, await stat(path), Number.POSITIVE_INFINITY);
    const file = await open(path, 'r');
    try {
      const { size } = refuseUnfit(path, await file.stat(), Number.POSITIVE_INFINITY);
      return {
        size,
        read: (from, length) => piece(file, path, from, Math.min(length, size - from)),
        readNow: (from, length) => pieceNow(file.fd, from, Math.min(length, size - from)),
        close: () => file.close(),
      };
    } catch (error) {
      await file.close();
      throw error;
    }
  } catch (error) {
    throw await inWords(error, path, 'read');
  }
}

async function piece(file: FileHandle, path: string, from: number, length: number): Promise<Uint8Array> {
  const bytes = new Uint8Array(Math.max(0, length));
  let filled = 0;
  try {
    while (filled < bytes.length) {
      const { bytesRead } = await file.read(bytes, filled, bytes.length - filled, from + filled);
      if (bytesRead === 0) break;
      filled += bytesRead;
    }
  } catch (error) {
    throw await inWords(error, path, 'read');
  }
  return bytes.subarray(0, filled);
}

function pieceNow(file: number, from: number, length: number): Uint8Array {
  const bytes = new Uint8Array(Math.max(0, length));
  let filled = 0;
  while (filled < bytes.length) {
    const read = readSync(file, bytes, filled, bytes.length - filled, from + filled);
    if (read === 0) break;
    filled += read;
  }
  return bytes.subarray(0, filled);
}
