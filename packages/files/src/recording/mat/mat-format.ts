import { type Finding, notStated } from '@soundpost/core';
import type { ByteSource } from '../byte-source.ts';
import { lengthAgainstFile } from '../contradictions.ts';
import { type Block, framesInBlock, type OpenRecording, type RecordingFormat, refusedAt } from '../open-recording.ts';
import { letters, viewOf } from '../wav/riff-chunks.ts';
import { openHdf5Mat } from './hdf5/hdf5-mat.ts';
import { channelsOf, type NamedMatrix, refuseUncounted, remarksOf, squareFindings } from './mat-channels.ts';
import { type ChannelMatrix, matrixCursor, takesTooLong } from './mat-values.ts';
import { type NumberVariable, padded, type Stretch, VariableWalk, widthOf } from './mat-variables.ts';

/**
 * MAT files of version 5, packed or not, and of version 7.3. Each vector is a channel; of a matrix each column, or each row where there are
 * fewer rows than columns. Source: the layout of MAT files of level 5, from memory.
 */
export const matFormat: RecordingFormat<'mat'> = {
  kind: 'mat',
  name: 'MAT file',
  recognises: (first) =>
    isHdf5(first) || isVersion4(first) || (first.length >= 128 && /^(IM|MI)$/.test(letters(first, 126, 2))),
  open,
};

const headLength = 128;
const mostElements = 20_000;
const [miMatrix, miCompressed] = [14, 15];

function isHdf5(first: Uint8Array): boolean {
  return first[0] === 0x89 && letters(first, 1, 3) === 'HDF';
}

/** The version stands behind the text; the HDF5 file of a version 7.3 begins behind it, at byte 512. */
function isVersion73(head: Uint8Array, littleEndian: boolean): boolean {
  return head.length === headLength && !isHdf5(head) && viewOf(head).getUint16(124, littleEndian) === 0x200;
}

/** A file of version 4 has no head: type, rows, columns, imaginary part, length of the name, and the name. */
function isVersion4(first: Uint8Array): boolean {
  if (first.length < 24) return false;
  const view = viewOf(first);
  return [true, false].some((little) => {
    const [type, rows, columns, imaginary, length] = [0, 4, 8, 12, 16].map((at) => view.getUint32(at, little));
    const named = length! >= 2 && length! <= 64 && /^[A-Za-z]\w*\0$/.test(letters(first, 20, length!));
    return type! < 5000 && rows! > 0 && columns! > 0 && imaginary! <= 1 && named;
  });
}

async function open(source: ByteSource, file: string): Promise<OpenRecording> {
  const head = await source.read(0, headLength);
  const littleEndian = letters(head, 126, 2) === 'IM';
  if (isVersion73(head, littleEndian)) return openHdf5Mat(source, file, head);
  const other = otherVersion(head, littleEndian);
  if (other !== undefined) {
    throw refusedAt(file, 'its head', {
      read: other,
      expected: 'a MAT file of version 5, 6, 7 or 7.3',
      suggestion: "Save it again with the option '-v7', or export it as a Universal File.",
    });
  }
  const { walk, findings } = await walked(source, file, littleEndian);
  const matrices = walk.numbers.flatMap(matrixOf);
  refuseUncounted(file, matrices);
  const endless = matrices.find(takesTooLong);
  if (endless !== undefined) {
    throw refusedAt(file, endless.variable.path, {
      read: `a packed matrix of ${endless.channels} columns and ${endless.samples} rows`,
      expected: 'one that can be unpacked in bearable time',
      suggestion: "Save it unpacked, with the option '-v6', or each channel as a variable of its own.",
    });
  }
  const lefts = walk.numbers.filter(({ single, dimensions }) => single === undefined && dimensions.length > 2);
  return {
    recording: {
      form: `MAT version 5, ${littleEndian ? 'little' : 'big'}-endian`,
      channels: channelsOf(
        matrices.map((each) => named(each, source)),
        walk,
      ),
      start: notStated,
      remarks: remarksOf(head, walk, [...lefts.map(({ path }) => path), ...walk.passedOver]),
      findings: [...findings, ...matrices.flatMap((each) => matrixFindings(each, source))],
    },
    blocks: () => blocks(source, matrices, littleEndian),
  };
}

/** What it is, where it is of another version than is read here. */
function otherVersion(head: Uint8Array, littleEndian: boolean): string | undefined {
  if (isVersion4(head)) return 'MAT version 4';
  if (isHdf5(head)) return 'a file of HDF5 without the head of a MAT file';
  const version = viewOf(head).getUint16(124, littleEndian);
  return version === 0x100 ? undefined : `MAT version ${(version / 256).toFixed(1)}`;
}

function named(matrix: ChannelMatrix, source: ByteSource): NamedMatrix {
  const { variable, channels, samples, interleaved } = matrix;
  return {
    path: variable.path,
    channels,
    samples,
    interleaved,
    complex: variable.imaginary !== undefined,
    there: (channel) => (variable.stretch.packed ? undefined : thereOf(matrix, channel, source)),
  };
}

async function walked(source: ByteSource, file: string, littleEndian: boolean) {
  const walk = new VariableWalk(source, file, littleEndian);
  const findings: Finding[] = [];
  let at = headLength;
  for (let seen = 0; at + 8 <= source.size; seen++) {
    if (seen >= mostElements) {
      throw refusedAt(file, `byte ${at}`, { read: 'another element', expected: `at most ${mostElements} elements` });
    }
    const tag = viewOf(await source.read(at, 8));
    const type = tag.getUint32(0, littleEndian);
    const bytes = type >>> 16 === 0 ? tag.getUint32(4, littleEndian) : 0;
    const end = at + 8 + bytes;
    if (end > source.size) findings.push(lengthAgainstFile(file, 'bytes of a variable', bytes, source.size - at - 8));
    const stretch = (from: number): Stretch => ({
      from,
      end: Math.min(end, source.size),
      packed: type === miCompressed,
    });
    if (type === miCompressed) await walk.walk(stretch(at + 8));
    if (type === miMatrix) await walk.walk(stretch(at));
    at = type === miCompressed ? end : at + 8 + padded(bytes);
  }
  return { walk, findings };
}

function matrixOf(variable: NumberVariable): readonly ChannelMatrix[] {
  const [rows, columns] = variable.dimensions;
  if (variable.dimensions.length !== 2 || !(rows! > 0) || !(columns! > 0) || rows! * columns! < 2) return [];
  const interleaved = columns! > rows!;
  const channels = interleaved ? rows! : columns!;
  const claimed = interleaved ? columns! : rows!;
  const there = Math.floor(variable.real.bytes / widthOf[variable.real.type]!);
  const samples =
    interleaved || channels > 1 ? Math.min(claimed, Math.floor(there / channels)) : Math.min(claimed, there);
  return [{ variable, channels, samples: there < claimed * channels ? samples : claimed, interleaved }];
}

function matrixFindings({ variable, interleaved, samples }: ChannelMatrix, source: ByteSource): readonly Finding[] {
  const { dimensions, path, real, stretch } = variable;
  const [rows, columns] = dimensions as readonly [number, number];
  const claimed = interleaved ? columns : rows;
  const cut = !stretch.packed && stretch.from + real.from + real.bytes > source.size;
  return [
    ...(samples < claimed ? [lengthAgainstFile(path, 'samples of each channel', claimed, samples)] : []),
    ...(cut && samples === claimed
      ? [lengthAgainstFile(path, 'bytes of numbers', real.bytes, Math.max(0, source.size - stretch.from - real.from))]
      : []),
    ...squareFindings(path, rows, columns),
  ];
}

/** Samples of a channel that stand in the file, where it may have been cut off. */
function thereOf(
  { variable, channels, samples, interleaved }: ChannelMatrix,
  number: number,
  source: ByteSource,
): number {
  const width = widthOf[variable.real.type]!;
  const bytes = Math.max(0, source.size - variable.stretch.from - variable.real.from);
  const there = Math.floor(interleaved ? bytes / width / channels : bytes / width - number * samples);
  return Math.max(0, Math.min(samples, there));
}

async function* blocks(
  source: ByteSource,
  matrices: readonly ChannelMatrix[],
  littleEndian: boolean,
): AsyncGenerator<Block> {
  const cursors = matrices.map((matrix) => ({
    matrix,
    real: matrixCursor(source, matrix, matrix.variable.real, littleEndian),
    imaginary:
      matrix.variable.imaginary === undefined
        ? undefined
        : matrixCursor(source, matrix, matrix.variable.imaginary, littleEndian),
  }));
  const atOnce = framesInBlock(matrices.reduce((sum, { channels }) => sum + channels, 0));
  const longest = Math.max(...matrices.map(({ samples }) => samples));
  const complex = cursors.some(({ imaginary }) => imaginary !== undefined);
  try {
    for (let from = 0; from < longest; from += atOnce) {
      const values: Float64Array[] = [];
      const imaginaries: (Float64Array | undefined)[] = [];
      for (const { matrix, real, imaginary } of cursors) {
        const count = Math.max(0, Math.min(atOnce, matrix.samples - from));
        const read = await real.next(count);
        values.push(...read);
        imaginaries.push(...(imaginary === undefined ? read.map(() => undefined) : await imaginary.next(count)));
      }
      if (values.every(({ length }) => length === 0)) return;
      yield { from, values, ...(complex ? { imaginary: imaginaries } : {}) };
    }
  } finally {
    for (const { real, imaginary } of cursors) {
      await real.close();
      await imaginary?.close();
    }
  }
}
