import { type ByteSource, ForwardBytes } from '../byte-source.ts';

/** Bytes that can only be read forwards: a stretch of the file, or what a compressed stretch unpacks to. */
export interface ByteStream {
  /** Exactly so many bytes, or fewer where the stream ends. */
  take(length: number): Promise<Uint8Array>;
  skip(length: number): Promise<void>;
  close(): Promise<void>;
}

export function plainStream(source: ByteSource, from: number, end: number): ByteStream {
  let bytes = new ForwardBytes(source, from, end);
  return {
    take: (length) => bytes.take(length),
    skip: async (length) => {
      bytes = new ForwardBytes(source, Math.min(end, bytes.place + length), end);
    },
    close: async () => {},
  };
}

/**
 * What a zlib stretch unpacks to, unpacked piece by piece as it is asked for. A damaged stretch ends early, as a file
 * that was cut off does.
 */
export function unpackedStream(source: ByteSource, from: number, end: number): ByteStream {
  const packed = new ForwardBytes(source, from, end, 64 * 1024);
  const unpacking = new DecompressionStream('deflate');
  const writer = unpacking.writable.getWriter();
  const reader = unpacking.readable.getReader();
  // Failures of either end show at the reader; here they only must not be lost unheard.
  const failed = () => {};
  writer.closed.catch(failed);
  reader.closed.catch(failed);
  let feeding: Promise<void> | undefined;
  let [piece, at, ended] = [new Uint8Array(0) as Uint8Array, 0, false];

  async function feed(): Promise<void> {
    for (;;) {
      const bytes = await packed.rest();
      packed.skip(bytes.length);
      if (bytes.length === 0) break;
      await writer.ready;
      await writer.write(new Uint8Array(bytes));
    }
    await writer.close();
  }

  async function rest(): Promise<Uint8Array> {
    feeding ??= feed().catch(failed);
    while (at >= piece.length && !ended) {
      const read = await reader.read().catch(() => undefined);
      if (read === undefined || read.done) ended = true;
      else [piece, at] = [read.value, 0];
    }
    return ended ? new Uint8Array(0) : piece.subarray(at);
  }

  async function take(length: number): Promise<Uint8Array> {
    const parts: Uint8Array[] = [];
    let filled = 0;
    while (filled < length) {
      const more = (await rest()).subarray(0, length - filled);
      if (more.length === 0) break;
      at += more.length;
      filled += more.length;
      parts.push(more);
    }
    return joined(parts, filled);
  }

  async function skip(length: number): Promise<void> {
    for (let left = length; left > 0; ) {
      const passed = Math.min(left, (await rest()).length);
      if (passed === 0) return;
      at += passed;
      left -= passed;
    }
  }

  return {
    take,
    skip,
    close: async () => {
      await Promise.all([reader.cancel().catch(failed), writer.abort().catch(failed)]);
      await feeding;
    },
  };
}

function joined(parts: readonly Uint8Array[], length: number): Uint8Array {
  if (parts.length === 1) return parts[0]!;
  const whole = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
