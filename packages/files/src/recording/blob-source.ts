import type { ByteSource } from './byte-source.ts';

/** What of a Blob or a File of a page is used here; this package knows no page. */
export interface Sliced {
  readonly size: number;
  slice(from: number, to: number): { arrayBuffer(): Promise<ArrayBuffer> };
}

/** A file chosen in a page, read in pieces where it lies: nothing of it is held, and nothing leaves the machine. */
export function bytesOfBlob(blob: Sliced): ByteSource {
  return {
    size: blob.size,
    read: async (from, length) =>
      new Uint8Array(await blob.slice(Math.min(from, blob.size), Math.min(from + length, blob.size)).arrayBuffer()),
  };
}
