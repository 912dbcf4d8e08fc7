import type { Hdf5File } from './hdf5-file.ts';
import { numbersIn } from './hdf5-numbers.ts';
import type { Hdf5Numbers } from './hdf5-variables.ts';

/** A matrix of which each column, or each row, is a channel. */
export interface Hdf5Matrix {
  readonly variable: Hdf5Numbers;
  readonly rows: number;
  readonly columns: number;
  readonly channels: number;
  readonly samples: number;
  /** The rows are the channels. */
  readonly interleaved: boolean;
}

/** Bytes of all matrices together that are read at once, and held until they have been handed on. */
const mostHeld = 128 * 1024 * 1024;

/** What is unpacked in all, where a large chunk is unpacked more than once. */
const mostUnpacked = 64 * 1024 ** 3;
const largestChunk = 256 * 1024 * 1024;

export function matrixOf(variable: Hdf5Numbers): readonly Hdf5Matrix[] {
  const { shape } = variable;
  if (shape.length === 0 || shape.length > 2) return [];
  // The dimensions stand in reverse; a single one is that of a column.
  const [rows, columns] = shape.length === 2 ? [shape[1]!, shape[0]!] : [shape[0]!, 1];
  if (rows < 1 || columns < 1 || rows * columns < 2) return [];
  const interleaved = columns > rows;
  const [channels, samples] = interleaved ? [rows, columns] : [columns, rows];
  return [{ variable, rows, columns, channels, samples, interleaved }];
}

export function bytesOf({ variable, channels, samples }: Hdf5Matrix): number {
  return channels * samples * variable.layout.size;
}

interface ChunkLayout {
  /** Samples of a channel, and channels, that one chunk holds. */
  readonly along: number;
  readonly across: number;
}

function chunkOf({ variable, interleaved }: Hdf5Matrix): ChunkLayout | undefined {
  const { chunks, packed } = variable;
  if (chunks === undefined || !packed) return undefined;
  if (chunks.length === 1) return { along: chunks[0]!, across: 1 };
  const [across, along] = interleaved ? [chunks[1]!, chunks[0]!] : [chunks[0]!, chunks[1]!];
  return { along, across };
}

/** Samples of each channel that are read at once: whole chunks, as far as they may be held. */
function readAtOnce(matrix: Hdf5Matrix, atOnce: number, allChannels: number): number {
  const chunk = chunkOf(matrix);
  const most = Math.max(atOnce, Math.floor(mostHeld / allChannels / matrix.variable.layout.size));
  if (chunk === undefined || chunk.along <= 0) return atOnce;
  return Math.min(most, Math.ceil(atOnce / chunk.along) * chunk.along);
}

/** Whether reading it would unpack it so often that nobody would wait for the end. */
export function takesTooLong(matrix: Hdf5Matrix, atOnce: number, allChannels: number): boolean {
  const chunk = chunkOf(matrix);
  if (chunk === undefined) return false;
  const { along, across } = chunk;
  const bytes = along * across * matrix.variable.layout.size;
  const read = readAtOnce(matrix, atOnce, allChannels);
  const touched =
    (read % along === 0 ? read / along : Math.ceil(read / along) + 1) * Math.ceil(matrix.channels / across);
  return bytes > largestChunk || Math.ceil(matrix.samples / read) * touched * bytes > mostUnpacked;
}

function joined(before: readonly Float64Array[], after: readonly Float64Array[]): readonly Float64Array[] {
  return before.map((each, index) => {
    const whole = new Float64Array(each.length + after[index]!.length);
    whole.set(each);
    whole.set(after[index]!, each.length);
    return whole;
  });
}

interface Frames {
  readonly values: readonly Float64Array[];
  readonly imaginary?: readonly Float64Array[];
}

/** Reads the channels of one matrix in order, so many samples at a time; fewer where it ends or cannot be read. */
export function matrixReader(matrix: Hdf5Matrix, hdf5: Hdf5File, atOnce: number, allChannels: number) {
  const { variable, channels, samples, interleaved } = matrix;
  const { where, shape, layout } = variable;
  const ahead = readAtOnce(matrix, atOnce, allChannels);
  let held = { from: 0, count: 0, bytes: new Uint8Array(0) as Uint8Array };
  let [done, ended] = [0, false];

  function readOn(): void {
    const count = Math.min(ahead, samples - done);
    const spread = (along: number, across: number) =>
      shape.length === 1 ? [along] : interleaved ? [along, across] : [across, along];
    const bytes = count > 0 ? hdf5.box(where, layout.size, spread(done, 0), spread(count, channels)) : undefined;
    if (bytes === undefined) ended = true;
    else held = { from: done, count, bytes };
  }

  function heldFrames(wanted: number): Frames {
    if (!ended && done >= held.from + held.count) readOn();
    const count = ended ? 0 : Math.min(wanted, held.from + held.count - done);
    const first = done - held.from;
    done += count;
    const spread = (part: typeof layout.real) =>
      Array.from({ length: channels }, (_, channel) =>
        interleaved
          ? numbersIn(held.bytes, layout.size, part, first * channels + channel, count, channels)
          : numbersIn(held.bytes, layout.size, part, channel * held.count + first, count),
      );
    const values = spread(layout.real);
    return layout.imaginary === undefined ? { values } : { values, imaginary: spread(layout.imaginary) };
  }

  return (wanted: number): Frames => {
    let frames = heldFrames(wanted);
    // What is held may end within what is wanted.
    while (!ended && frames.values[0]!.length < wanted && done < samples) {
      const more = heldFrames(wanted - frames.values[0]!.length);
      frames = {
        values: joined(frames.values, more.values),
        ...(frames.imaginary === undefined ? {} : { imaginary: joined(frames.imaginary, more.imaginary!) }),
      };
    }
    return frames;
  };
}
