import type { ByteSource } from './byte-source.ts';

/** How a text of two bytes for each character is written. */
export interface WideText {
  readonly order: 'little-endian' | 'big-endian';
  /** Bytes of the mark at its beginning. */
  readonly mark: number;
}

/** UTF-16 by its mark, or by a zero at every second byte and nowhere else, as text of Latin letters has. */
export function wideTextIn(first: Uint8Array): WideText | undefined {
  if (first.length >= 4 && first[2] === 0 && first[3] === 0) return undefined;
  if (first[0] === 0xff && first[1] === 0xfe) return { order: 'little-endian', mark: 2 };
  if (first[0] === 0xfe && first[1] === 0xff) return { order: 'big-endian', mark: 2 };
  const looked = first.subarray(0, first.length & ~1);
  const zeros = [0, 0];
  const controls = [0, 0];
  looked.forEach((byte, index) => {
    if (byte === 0) zeros[index % 2]! += 1;
    else if (byte < 32 && ![9, 10, 13].includes(byte)) controls[index % 2]! += 1;
  });
  const half = looked.length / 2;
  if (half < 8) return undefined;
  if (zeros[1] === half && zeros[0] === 0 && controls[0] === 0) return { order: 'little-endian', mark: 0 };
  if (zeros[0] === half && zeros[1] === 0 && controls[1] === 0) return { order: 'big-endian', mark: 0 };
  return undefined;
}

/** The same text with one byte for each character; one beyond U+00FF, which no number is written with, becomes `?`. */
export function narrowed(source: ByteSource, { order, mark }: WideText): ByteSource {
  const [low, high] = order === 'little-endian' ? [0, 1] : [1, 0];
  return {
    size: Math.floor((source.size - mark) / 2),
    read: async (from, length) => {
      const wide = await source.read(mark + 2 * from, 2 * length);
      const minus = (at: number) => wide[at + high] === 0x22 && wide[at + low] === 0x12;
      return Uint8Array.from({ length: wide.length >> 1 }, (_, index) => {
        const at = 2 * index;
        if (wide[at + high] === 0) return wide[at + low]!;
        return minus(at) ? 0x2d : 0x3f;
      });
    },
  };
}
