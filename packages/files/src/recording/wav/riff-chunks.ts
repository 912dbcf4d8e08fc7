import type { ByteSource } from '../byte-source.ts';
import { refusedAt } from '../open-recording.ts';

/** A piece of a RIFF file: its four letters, where its content begins, and how long it claims to be. */
export interface Chunk {
  readonly name: string;
  readonly from: number;
  readonly claimed: number;
}

/** A recorder writes a handful; a file of chunks of no length would otherwise be walked for hours. */
const mostChunks = 4096;

const unwritten = 0xffff_ffff;

export function letters(bytes: Uint8Array, from: number, length = 4): string {
  return String.fromCharCode(...bytes.subarray(from, from + length));
}

export function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

/** A recorder that lost its power leaves the lengths of an empty file, or none; what follows are samples, no chunks. */
export function neverClosed(claimed: number, riffLength: number, from: number): boolean {
  return (claimed === 0 && riffLength + 8 <= from) || (claimed === unwritten && riffLength === unwritten);
}

/** Length of the whole as its first bytes claim, and every chunk up to the end; of RF64 with its lengths of 64 bits. */
export async function chunksOf(source: ByteSource, file: string) {
  const head = await source.read(0, 12);
  const wide = letters(head, 0) !== 'RIFF';
  let riffLength: number = viewOf(head).getUint32(4, true);
  let dataLength: number | undefined;
  const chunks: Chunk[] = [];
  let at = 12;
  while (at + 8 <= source.size) {
    if (chunks.length >= mostChunks) {
      throw refusedAt(file, `byte ${at}`, {
        read: `chunk ${mostChunks + 1}`,
        expected: `at most ${mostChunks} chunks before the samples`,
      });
    }
    const tag = await source.read(at, 8);
    const name = letters(tag, 0);
    const written = viewOf(tag).getUint32(4, true);
    // What stands behind the samples and has no name is no chunk.
    if (!/^[ -~]{4}$/.test(name) && chunks.some((each) => each.name === 'data')) break;
    const from = at + 8;
    if (wide && name === 'ds64' && written >= 28) {
      const sizes = viewOf(await source.read(from, 28));
      if (sizes.byteLength === 28) {
        riffLength = Number(sizes.getBigUint64(0, true));
        dataLength = Number(sizes.getBigUint64(8, true));
      }
    }
    const claimed = name === 'data' && written === unwritten && dataLength !== undefined ? dataLength : written;
    chunks.push({ name, from, claimed });
    if (name === 'data' && neverClosed(claimed, riffLength, from)) break;
    at = from + claimed + (claimed % 2);
  }
  return { wide, riffLength, chunks };
}
