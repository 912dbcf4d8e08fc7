import type { ByteSource } from '../byte-source.ts';
import { viewOf } from '../wav/riff-chunks.ts';
import type { ByteStream } from './mat-elements.ts';
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

/**
 * The numbers of a matrix are stored column after column. Where the columns are the channels each is read by a stream of
 * its own; a packed matrix is then unpacked once for each column, which takes time and no memory.
 */
export function matrixCursor(
  source: ByteSource,
  matrix: ChannelMatrix,
  numbers: Numbers,
  littleEndian: boolean,
): MatrixCursor {
  const width = widthOf[numbers.type]!;
  const { stretch } = matrix.variable;
  const streams = Array.from({ length: matrix.interleaved ? 1 : matrix.channels }, () => streamOf(source, stretch));
  let begun = false;

  async function begin(): Promise<void> {
    begun = true;
    for (const [column, stream] of streams.entries()) {
      await stream.skip(numbers.from + (matrix.interleaved ? 0 : column * matrix.samples * width));
    }
  }

  async function column(stream: ByteStream, count: number): Promise<Float64Array> {
    const bytes = await stream.take(count * width);
    const view = viewOf(bytes);
    return Float64Array.from({ length: Math.floor(bytes.length / width) }, (_, index) =>
      numberAt(view, index * width, numbers.type, littleEndian),
    );
  }

  async function frames(count: number): Promise<readonly Float64Array[]> {
    const together = await column(streams[0]!, count * matrix.channels);
    const whole = Math.floor(together.length / matrix.channels);
    return Array.from({ length: matrix.channels }, (_, channel) =>
      Float64Array.from({ length: whole }, (_, index) => together[index * matrix.channels + channel]!),
    );
  }

  return {
    async next(count) {
      if (!begun) await begin();
      if (matrix.interleaved) return frames(count);
      const read: Float64Array[] = [];
      for (const stream of streams) read.push(await column(stream, count));
      return read;
    },
    close: async () => {
      for (const stream of streams) await stream.close();
    },
  };
}
