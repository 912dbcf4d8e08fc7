import { notStated } from '@soundpost/core';
import type { ByteSource } from '../../byte-source.ts';
import { type Block, framesInBlock, type OpenRecording, refusedAt } from '../../open-recording.ts';
import { channelsOf, type NamedMatrix, refuseUncounted, remarksOf, squareFindings } from '../mat-channels.ts';
import { Hdf5File, withoutWaiting } from './hdf5-file.ts';
import { bytesOf, type Hdf5Matrix, matrixOf, matrixReader, takesTooLong } from './hdf5-matrix.ts';
import { Hdf5Walk } from './hdf5-variables.ts';

/** A packed stretch unpacks to no more than this times its size (RFC 1951: 258 bytes from 2 bits). */
const mostFromPacked = 1032;

/** MAT files of version 7.3: an HDF5 file behind a head of 512 bytes. Throws Refusal. */
export async function openHdf5Mat(from: ByteSource, file: string, head: Uint8Array): Promise<OpenRecording> {
  const source = await withoutWaiting(from, file);
  const walk = await walked(source, file);
  const matrices = walk.numbers.flatMap(matrixOf);
  refuseUncounted(file, matrices);
  refuseUnbelievable(matrices, source.size, file);
  const lefts = walk.numbers.filter(({ shape }) => shape.length > 2).map(({ path }) => path);
  return {
    recording: {
      form: 'MAT version 7.3, HDF5',
      channels: channelsOf(matrices.map(named), walk),
      start: notStated,
      remarks: remarksOf(head, walk, [...lefts, ...walk.passedOver]),
      findings: matrices.flatMap(({ variable, rows, columns }) => squareFindings(variable.path, rows, columns)),
    },
    blocks: () => blocks(source, file, matrices),
  };
}

async function walked(source: Required<ByteSource>, file: string): Promise<Hdf5Walk> {
  const hdf5 = await Hdf5File.open(source, file);
  try {
    const walk = new Hdf5Walk(hdf5, file);
    walk.walk();
    return walk;
  } finally {
    hdf5.close();
  }
}

function named({ variable, channels, samples, interleaved }: Hdf5Matrix): NamedMatrix {
  const complex = variable.layout.imaginary !== undefined;
  return { path: variable.path, channels, samples, interleaved, complex, there: () => undefined };
}

/** What was never written reads as zeros without end: more than the file can hold is not believed. */
function refuseUnbelievable(matrices: readonly Hdf5Matrix[], size: number, file: string): void {
  for (const packed of [true, false]) {
    const claiming = matrices.filter(({ variable }) => variable.packed === packed);
    const claimed = claiming.reduce((sum, each) => sum + bytesOf(each), 0);
    if (claimed <= size * (packed ? mostFromPacked : 1)) continue;
    throw refusedAt(file, claiming.reduce((a, b) => (bytesOf(b) > bytesOf(a) ? b : a)).variable.path.slice(0, 80), {
      read: `numbers of ${claimed.toPrecision(3)} bytes${packed ? ' when unpacked' : ''}`,
      expected: `no more than a file of ${size} bytes can hold`,
      suggestion: 'Much of it may never have been written: save only what was recorded.',
    });
  }
  const all = matrices.reduce((sum, { channels }) => sum + channels, 0);
  const endless = matrices.find((each) => takesTooLong(each, framesInBlock(all), all));
  if (endless === undefined) return;
  throw refusedAt(file, endless.variable.path.slice(0, 80), {
    read: `a packed matrix of ${endless.columns} columns and ${endless.rows} rows in chunks of ${endless.variable.chunks!.join(' × ')}`,
    expected: 'one that can be unpacked in bearable time',
    suggestion: 'Save it unpacked, or each channel as a variable of its own.',
  });
}

async function* blocks(
  source: Required<ByteSource>,
  file: string,
  matrices: readonly Hdf5Matrix[],
): AsyncGenerator<Block> {
  const hdf5 = await Hdf5File.open(source, file);
  try {
    const all = matrices.reduce((sum, { channels }) => sum + channels, 0);
    const atOnce = framesInBlock(all);
    const readers = matrices.map((matrix) => ({ matrix, next: matrixReader(matrix, hdf5, atOnce, all) }));
    const longest = Math.max(...matrices.map(({ samples }) => samples));
    const complex = matrices.some(({ variable }) => variable.layout.imaginary !== undefined);
    for (let from = 0; from < longest; from += atOnce) {
      const frames = readers.map(({ matrix, next }) => next(Math.max(0, Math.min(atOnce, matrix.samples - from))));
      const values = frames.flatMap((each) => each.values);
      if (values.every(({ length }) => length === 0)) return;
      const imaginary = frames.flatMap<Float64Array | undefined>(
        (each) => each.imaginary ?? each.values.map(() => undefined),
      );
      yield { from, values, ...(complex ? { imaginary } : {}) };
    }
  } finally {
    hdf5.close();
  }
}
