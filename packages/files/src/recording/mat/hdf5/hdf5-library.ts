import type { ByteSource } from '../../byte-source.ts';
import { refusedAt } from '../../open-recording.ts';

/** How a number of a dataset is stored, as the library says it. */
export interface StoredAs {
  readonly type: number;
  readonly size: number;
  readonly signed: boolean;
  readonly littleEndian: boolean;
  readonly ref_type?: string;
  readonly vlen: boolean;
  readonly compound_type?: {
    readonly members: readonly (StoredAs & { readonly name: string; readonly offset: number })[];
  };
}

export interface Extent extends StoredAs {
  readonly shape: readonly number[] | null;
  readonly chunks: readonly number[] | null;
  readonly virtual_sources?: readonly unknown[];
}

interface FileNode {
  stream_ops: Readonly<Record<string, unknown>>;
}

/** What of the library is used here. */
export interface Hdf5Library {
  readonly HEAPU8: Uint8Array;
  readonly H5G_GROUP: number;
  readonly H5G_DATASET: number;
  readonly FS: {
    readonly ErrnoError: new (code: number) => Error;
    readonly streams: readonly ({ stream_ops: Readonly<Record<string, unknown>> } | null | undefined)[];
    createFile(folder: string, name: string, properties: object, canRead: boolean, canWrite: boolean): FileNode;
    unlink(path: string): void;
  };
  _malloc(bytes: number): number;
  _free(at: number): void;
  open(path: string, mode: number, trackOrder: boolean, low: number, high: number): bigint;
  close_file(file: bigint): number;
  get_names(file: bigint, path: string, recursive: boolean): readonly string[];
  get_type(file: bigint, path: string): number;
  get_dataset_metadata(file: bigint, path: string): Extent;
  get_dataset_filters(file: bigint, path: string): readonly { readonly id: number }[];
  get_dataset_data(
    file: bigint,
    path: string,
    count: readonly bigint[],
    offset: readonly bigint[],
    strides: readonly bigint[],
    at: bigint,
  ): number;
  get_attribute_metadata(file: bigint, path: string, name: string): Extent;
  get_attribute_data(file: bigint, path: string, name: string, at: bigint): number;
  create_object_reference(file: bigint, path: string): Iterable<number>;
  get_referenced_name(file: bigint, reference: Uint8Array, isObject: boolean): string | null;
}

let library: Promise<Hdf5Library> | undefined;
let starts = 0;
const stopped = new WeakSet<Hdf5Library>();

/** The library, which is only loaded where a file needs it. Throws Refusal. */
export async function hdf5Library(file: string): Promise<Hdf5Library> {
  if (library !== undefined && stopped.has(await library)) library = undefined;
  library ??= loaded(starts++);
  const starting = library;
  try {
    return await starting;
  } catch (error) {
    library = undefined;
    throw refusedAt(file, 'its head', {
      read: 'a file of HDF5, as MAT version 7.3, whose reader does not start here',
      expected: 'a place where WebAssembly runs, and no damaged file before this one',
      suggestion: `Start again, read it with the command line, or save it again with the option '-v7'. (${String(error).slice(0, 80)})`,
    });
  }
}

/** What the library answers; nothing where it says that it cannot. Throws Refusal where it stops within itself. */
export function asked<Answer>(from: Hdf5Library, file: string, question: () => Answer): Answer | undefined {
  if (!stopped.has(from)) {
    try {
      return question();
    } catch (error) {
      // Once it has stopped within itself nothing it says afterwards can be trusted.
      const stops = !(error instanceof Error) || error.name === 'RuntimeError' || error instanceof RangeError;
      if (!stops) return undefined;
      stopped.add(from);
    }
  }
  throw refusedAt(file, 'its HDF5 file', {
    read: 'something on which the reader of HDF5 stopped',
    expected: 'a file that is not damaged',
    suggestion: "Save it again with the option '-v7', or copy it again from where it was recorded.",
  });
}

const [create, notGiven] = [2, -1];

/** Whether it still makes an empty file: damaged files can leave it so that it opens none any more. */
export function stillWorks(from: Hdf5Library): boolean {
  try {
    const made = from.open('/empty', create, false, notGiven, notGiven);
    if (made >= 0n && from.close_file(made) >= 0) {
      from.FS.unlink('/empty');
      return true;
    }
  } catch {
    // It does not.
  }
  stopped.add(from);
  return false;
}

/** A library that has stopped is replaced by a new one, where modules can be loaded twice: not in a page. */
async function loaded(before: number): Promise<Hdf5Library> {
  const { ready } = (
    before === 0
      ? await import('h5wasm')
      : await import(/* @vite-ignore */ `${import.meta.resolve('h5wasm')}?${before}`)
  ) as { readonly ready: Promise<unknown> };
  const started = (await ready) as Hdf5Library;
  // A file may say that its numbers stand in another file; none is within reach, the devices neither.
  for (const device of ['stdin', 'stdout', 'stderr', 'tty', 'tty1', 'random', 'urandom']) {
    try {
      started.FS.unlink(`/dev/${device}`);
    } catch {
      // It is not there.
    }
  }
  // What it prints of a damaged file is said in our own words.
  for (const stream of started.FS.streams.slice(1, 3)) {
    if (stream === null || stream === undefined) continue;
    stream.stream_ops = {
      ...stream.stream_ops,
      write: (_stream: unknown, _bytes: unknown, _from: number, length: number) => length,
    };
  }
  return started;
}

const inputOutputError = 29;
let placed = 0;

/** Puts a file that is read in pieces where the library finds it; gives its path there and how to take it away. */
export function placedFile({ FS }: Hdf5Library, source: ByteSource & Required<Pick<ByteSource, 'readNow'>>) {
  const name = `recording-${++placed}`;
  const node = FS.createFile('/', name, {}, true, false);
  let given: typeof source | undefined = source;
  Object.defineProperty(node, 'usedBytes', { get: () => given?.size ?? 0, set: () => {} });
  const read = (_stream: unknown, into: Uint8Array, at: number, length: number, from: number): number => {
    try {
      const bytes = given?.readNow(from, Math.max(0, Math.min(length, given.size - from))) ?? new Uint8Array(0);
      into.set(bytes, at);
      return bytes.length;
    } catch {
      throw new FS.ErrnoError(inputOutputError);
    }
  };
  const { llseek } = node.stream_ops;
  node.stream_ops = { llseek, read };
  return {
    path: `/${name}`,
    takeAway: () => {
      given = undefined;
      FS.unlink(`/${name}`);
    },
  };
}
