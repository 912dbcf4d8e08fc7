import { type ByteSource, bytesInMemory } from '../../byte-source.ts';
import { refusedAt } from '../../open-recording.ts';
import { asked, type Extent, type Hdf5Library, hdf5Library, placedFile, stillWorks } from './hdf5-library.ts';

/** What can only be read by waiting is held as a whole up to this size. */
export const mostHeld = 256 * 1024 * 1024;

/** Longer than any word that says what a variable is. */
const longestWord = 64;

/**
 * A source that is read without waiting. The library cannot wait: what a page reads of a chosen file is taken into memory,
 * up to a bound. Throws Refusal.
 */
export async function withoutWaiting(source: ByteSource, file: string, most = mostHeld) {
  const { size, readNow } = source;
  if (readNow !== undefined) return { size, read: source.read, readNow };
  if (size > most) {
    throw refusedAt(file, 'its head', {
      read: `a MAT file of version 7.3 of ${Math.ceil(size / 2 ** 20)} MB`,
      expected: `one of at most ${most / 2 ** 20} MB where it can only be read as a whole`,
      suggestion:
        "Read it with the command line, which reads it in pieces, or save it with the option '-v7', as WAV or as CSV.",
    });
  }
  const bytes = await source.read(0, size);
  return bytesInMemory(bytes) as Required<ByteSource>;
}

/** An HDF5 file that is open, until it is closed. Every call answers at once; what is not there or damaged is undefined. */
export class Hdf5File {
  readonly #library: Hdf5Library;
  readonly #file: string;
  readonly #id: bigint;
  readonly #takeAway: () => void;

  private constructor(library: Hdf5Library, file: string, id: bigint, takeAway: () => void) {
    this.#library = library;
    this.#file = file;
    this.#id = id;
    this.#takeAway = takeAway;
  }

  /** Throws Refusal. */
  static async open(source: Required<ByteSource>, file: string): Promise<Hdf5File> {
    for (let tries = 0; tries < 2; tries++) {
      const library = await hdf5Library(file);
      const { path, takeAway } = placedFile(library, source);
      const id = asked(library, file, () => library.open(path, 0, false, -1, -1)) ?? -1n;
      if (id >= 0n) return new Hdf5File(library, file, id, takeAway);
      takeAway();
      if (stillWorks(library)) break;
    }
    throw refusedAt(file, 'its HDF5 file', {
      read: 'no HDF5 file, or one that is cut off or damaged',
      expected: 'the HDF5 file of a MAT file of version 7.3',
      suggestion: 'Copy it again from where it was recorded, and compare the sizes.',
    });
  }

  namesIn(path: string): readonly string[] {
    return this.#asked((library) => library.get_names(this.#id, path, false)) ?? [];
  }

  kindOf(path: string): 'group' | 'dataset' | undefined {
    const type = this.#asked((library) => library.get_type(this.#id, path));
    if (type === this.#library.H5G_GROUP) return 'group';
    return type === this.#library.H5G_DATASET ? 'dataset' : undefined;
  }

  extentOf(path: string): Extent | undefined {
    return this.#asked((library) => library.get_dataset_metadata(this.#id, path));
  }

  filtersOf(path: string): readonly number[] | undefined {
    return this.#asked((library) => library.get_dataset_filters(this.#id, path).map(({ id }) => id));
  }

  /** The bytes of one short attribute, as it is stored. */
  attribute(path: string, name: string): { readonly as: Extent; readonly bytes: Uint8Array } | undefined {
    const as = this.#asked((library) => library.get_attribute_metadata(this.#id, path, name));
    if (as === undefined || as.vlen || as.shape === null || as.type > 3) return undefined;
    const length = as.shape.reduce((product, each) => product * each, as.size);
    if (!(length > 0 && length <= longestWord)) return undefined;
    const bytes = this.#into(length, (library, at) => library.get_attribute_data(this.#id, path, name, at));
    return bytes === undefined ? undefined : { as, bytes };
  }

  /** The bytes of a box of a dataset, little-endian; nothing where they cannot be read. */
  box(path: string, size: number, from: readonly number[], count: readonly number[]): Uint8Array | undefined {
    const [offset, counts] = [from.map(BigInt), count.map(BigInt)];
    const strides = count.map(() => 1n);
    const length = count.reduce((product, each) => product * each, size);
    return this.#into(length, (library, at) => library.get_dataset_data(this.#id, path, counts, offset, strides, at));
  }

  /** Where what a reference means stands. */
  referredTo(reference: Uint8Array): string | undefined {
    if (reference.every((byte) => byte === 0)) return undefined;
    return this.#asked((library) => library.get_referenced_name(this.#id, reference, true)) ?? undefined;
  }

  /** The same for every name of one object. */
  objectAt(path: string): string | undefined {
    return this.#asked((library) => [...library.create_object_reference(this.#id, path)].join());
  }

  close(): void {
    try {
      this.#asked((library) => library.close_file(this.#id));
    } finally {
      this.#takeAway();
    }
  }

  #into(length: number, read: (library: Hdf5Library, at: bigint) => number): Uint8Array | undefined {
    return this.#asked((library) => {
      const at = library._malloc(length);
      if (at === 0) return undefined;
      try {
        // What is not written must not show what stood there before.
        library.HEAPU8.fill(0, at, at + length);
        return read(library, BigInt(at)) < 0 ? undefined : library.HEAPU8.slice(at, at + length);
      } finally {
        library._free(at);
      }
    });
  }

  #asked<Answer>(question: (library: Hdf5Library) => Answer): Answer | undefined {
    return asked(this.#library, this.#file, () => question(this.#library));
  }
}
