import type { ByteSource } from '../byte-source.ts';
import { viewOf } from '../wav/riff-chunks.ts';
import { type Numbers, type NumberVariable, numberAt, streamOf, widthOf } from './mat-variables.ts';

/** A matrix of which each column, or each row, is a channel. */
export interface ChannelMatrix {
  readonly variable: NumberVariable;
  readonly channels: number;
  readonly samples: number;
  /** A sample of every channel stands beside the next: the rows are the channels. */
  readonly interleaved: boolean;
}

/** Reads the channels of one matrix in order, so many samples at a time. */
export interface MatrixCursor {
  next(count: number): Promise<readonly Float64Array[]>;
  close(): Promise<void>;
}

/** A packed matrix of many columns up to this size is unpacked once and held. */
const mostHeld = 64 * 1024 * 1024;

/** What is unpacked in all, where a larger one is unpacked once for each column. */
const mostUnpacked = 64 * 1024 ** 3;

function unpackedBytes({ variable, channels, samples }: ChannelMatrix): number {
  return channels * samples * widthOf[variable.real.type]!;
}

/** Whether reading it would unpack it so often that nobody would wait for the end. */
export function takesTooLong(matrix: ChannelMatrix): boolean {
  const bytes = unpackedBytes(matrix);
  return (
    matrix.variable.stretch.packed && !matrix.interleaved && bytes > mostHeld && bytes * matrix.channels > mostUnpacked
  );
}

/**
 * The numbers of a matrix are stored column after column. Where the columns are the channels each is read by a stream of
 * its own. A packed matrix can only be unpacked from its beginning: a small one is held, a large one is unpacked once for
 * each column, which takes time and no memory.
 */
export function matrixCursor(
  source: ByteSource,
  matrix: ChannelMatrix,
  numbers: Numbers,
  littleEndian: boolean,
  most = mostHeld,
): MatrixCursor {
  const width = widthOf[numbers.type]!;
  const { variable, channels, samples, interleaved } = matrix;
  const { stretch } = variable;
  const holds = stretch.packed && !interleaved && channels > 1 && channels * samples * width <= most;
  const streams = Array.from({ length: interleaved || holds ? 1 : channels }, () => streamOf(source, stretch));
  let held: Uint8Array | undefined;
  let [begun, done] = [false, 0];

  async function begin(): Promise<void> {
    begun = true;
    for (const [index, stream] of streams.entries()) {
      await stream.skip(numbers.from + index * samples * width);
    }
    if (holds) held = await streams[0]!.take(channels * samples * width);
  }

  function numbersIn(bytes: Uint8Array): Float64Array {
    const view = viewOf(bytes);
    return Float64Array.from({ length: Math.floor(bytes.length / width) }, (_, index) =>
      numberAt(view, index * width, numbers.type, littleEndian),
    );
  }

  function heldColumn(bytes: Uint8Array, column: number, count: number): Float64Array {
    const from = (column * samples + done) * width;
    return numbersIn(bytes.subarray(from, from + count * width));
  }

  async function frames(count: number): Promise<readonly Float64Array[]> {
    const together = numbersIn(await streams[0]!.take(count * channels * width));
    const whole = Math.floor(together.length / channels);
    return Array.from({ length: channels }, (_, channel) =>
      Float64Array.from({ length: whole }, (_, index) => together[index * channels + channel]!),
    );
  }

  return {
    async next(count) {
      if (!begun) await begin();
      if (interleaved) return frames(count);
      const read: Float64Array[] = [];
      for (let column = 0; column < channels; column++) {
        read.push(
          held === undefined ? numbersIn(await streams[column]!.take(count * width)) : heldColumn(held, column, count),
        );
      }
      done += count;
      return read;
    },
    close: async () => {
      for (const stream of streams) await stream.close();
    },
  };
}
