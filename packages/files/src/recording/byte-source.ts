/** Bytes that can be read in pieces from anywhere: a file on the disk, a file chosen in a page, bytes in memory. */
export interface ByteSource {
  readonly size: number;
  /** The bytes from a place on; fewer than asked for only where the source ends. */
  read(from: number, length: number): Promise<Uint8Array>;
  /** The same without waiting, where the source can: what a library asks for that cannot wait. */
  readNow?(from: number, length: number): Uint8Array;
}

export function bytesInMemory(bytes: Uint8Array): ByteSource {
  const readNow = (from: number, length: number) =>
    bytes.subarray(Math.min(from, bytes.length), Math.min(from + length, bytes.length));
  return { size: bytes.length, read: async (from, length) => readNow(from, length), readNow };
}

/** Bytes asked for at once where small pieces are wanted one after another. */
export const pieceLength = 256 * 1024;

/** Reads forwards in small steps from a source that is better read in large pieces. Holds one piece. */
export class ForwardBytes {
  readonly #source: ByteSource;
  readonly #end: number;
  readonly #pieceLength: number;
  #piece: Uint8Array = new Uint8Array(0);
  #at = 0;
  /** Where in the source the next byte stands. */
  place: number;

  constructor(source: ByteSource, from: number, end = source.size, piece = pieceLength) {
    this.#source = source;
    this.#pieceLength = piece;
    this.#end = Math.min(end, source.size);
    this.place = from;
  }

  /** What is left of the piece in hand, or the next piece; empty at the end. */
  async rest(): Promise<Uint8Array> {
    if (this.#at >= this.#piece.length) {
      const length = Math.min(this.#pieceLength, this.#end - this.place);
      this.#piece = length > 0 ? await this.#source.read(this.place, length) : new Uint8Array(0);
      this.#at = 0;
    }
    return this.#piece.subarray(this.#at);
  }

  skip(length: number): void {
    this.#at += length;
    this.place += length;
  }

  /** Exactly so many bytes, or fewer where the source ends. */
  async take(length: number): Promise<Uint8Array> {
    const first = await this.rest();
    if (first.length >= length) {
      this.skip(length);
      return first.subarray(0, length);
    }
    const whole = new Uint8Array(Math.min(length, this.#end - this.place));
    let filled = 0;
    while (filled < whole.length) {
      const more = (await this.rest()).subarray(0, whole.length - filled);
      if (more.length === 0) return whole.subarray(0, filled);
      whole.set(more, filled);
      this.skip(more.length);
      filled += more.length;
    }
    return whole;
  }
}
