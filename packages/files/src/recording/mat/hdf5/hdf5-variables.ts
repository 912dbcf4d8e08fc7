import { refusedAt } from '../../open-recording.ts';
import type { Hdf5File } from './hdf5-file.ts';
import type { Extent } from './hdf5-library.ts';
import { layoutOf, type NumberLayout, numbersIn } from './hdf5-numbers.ts';

/** A variable of numbers, and where the file holds it. */
export interface Hdf5Numbers {
  readonly path: string;
  readonly where: string;
  /** As stored: the dimensions of the matrix in reverse. */
  readonly shape: readonly number[];
  readonly chunks: readonly number[] | undefined;
  readonly packed: boolean;
  readonly layout: NumberLayout;
  /** Its value, where it is a single number. */
  readonly single?: number;
}

/** Deeper or more than any recorder nests or names its variables. */
const deepest = 8;
const mostVariables = 20_000;
const longestText = 4096;

const [integer, reference] = [0, 7];

/** Packing of the library itself: deflate, shuffle, checksum. */
const deflate = 1;
const knownFilters = new Set([deflate, 2, 3]);

const numberClasses = new Set([
  'double',
  'single',
  'logical',
  ...[8, 16, 32, 64].flatMap((bits) => [`int${bits}`, `uint${bits}`]),
]);

/**
 * Walks the variables without reading their numbers. A structure is a group; a cell, and each field of an array of
 * structures, a dataset of references; text is numbers of 16 bits. Source: files of version 7.3, from memory.
 */
export class Hdf5Walk {
  readonly numbers: Hdf5Numbers[] = [];
  readonly texts: { readonly path: string; readonly text: string }[] = [];
  /** Paths of what is of no use here: objects, sparse matrices, what is damaged. */
  readonly passedOver: string[] = [];
  readonly #hdf5: Hdf5File;
  readonly #file: string;
  readonly #entered = new Set<string>();
  #seen = 0;

  constructor(hdf5: Hdf5File, file: string) {
    this.#hdf5 = hdf5;
    this.#file = file;
  }

  /** Throws Refusal. */
  walk(): void {
    for (const name of this.#hdf5.namesIn('/')) {
      // What variables refer to stands in groups whose names begin so.
      if (!name.startsWith('#')) this.#variable(`/${name}`, name, 0);
    }
  }

  #variable(where: string, path: string, depth: number): void {
    if (++this.#seen > mostVariables) {
      throw refusedAt(this.#file, path.slice(0, 80), {
        read: 'another variable',
        expected: `at most ${mostVariables} variables`,
      });
    }
    const kind = depth > deepest ? undefined : this.#hdf5.kindOf(where);
    if (kind === 'group') this.#structure(where, path, depth);
    else if (kind !== 'dataset' || !this.#dataset(where, path, depth)) this.passedOver.push(path);
  }

  /** Whether what leads further is come to for the first time: links may lead in a circle. */
  #enters(where: string): boolean {
    const object = this.#hdf5.objectAt(where);
    if (object === undefined || this.#entered.has(object)) return false;
    this.#entered.add(object);
    return true;
  }

  #structure(where: string, path: string, depth: number): void {
    const named = this.#classOf(where);
    if (
      (named ?? 'struct') !== 'struct' ||
      this.#hdf5.attribute(where, 'MATLAB_sparse') !== undefined ||
      !this.#enters(where)
    ) {
      this.passedOver.push(path);
      return;
    }
    for (const name of this.#hdf5.namesIn(where)) this.#variable(`${where}/${name}`, `${path}.${name}`, depth + 1);
  }

  /** Whether it is of any use. */
  #dataset(where: string, path: string, depth: number): boolean {
    const extent = this.#hdf5.extentOf(where);
    if (extent === undefined || extent.shape === null || extent.virtual_sources !== undefined) return false;
    if (this.#hdf5.attribute(where, 'MATLAB_empty')?.bytes[0] === 1) return true;
    const named = this.#classOf(where);
    if (extent.type === reference) return this.#references(where, path, depth, extent, named);
    if (named === 'char') return this.#text(where, path, extent);
    const layout = layoutOf(extent);
    if (layout === undefined || !numberClasses.has(named ?? 'double')) return false;
    const filters = this.#hdf5.filtersOf(where);
    if (filters === undefined || filters.some((each) => !knownFilters.has(each))) return false;
    const { shape } = extent;
    const only = shape.every((each) => each === 1) && layout.imaginary === undefined;
    const bytes = only ? this.#whole(where, shape, layout.size) : undefined;
    this.numbers.push({
      path,
      where,
      shape,
      chunks: extent.chunks ?? undefined,
      packed: filters.includes(deflate),
      layout,
      ...(bytes === undefined ? {} : { single: numbersIn(bytes, layout.size, layout.real, 0, 1)[0]! }),
    });
    return !only || bytes !== undefined;
  }

  #references(where: string, path: string, depth: number, { shape, size, ref_type }: Extent, named?: string): boolean {
    const count = shape!.reduce((product, each) => product * each, 1);
    const field = path.lastIndexOf('.');
    if (ref_type !== 'object' || size !== 8 || (named !== 'cell' && field < 0)) return false;
    if (count > mostVariables || !this.#enters(where)) return false;
    const bytes = this.#whole(where, shape!, size);
    if (bytes === undefined) return false;
    for (let index = 0; index < count; index++) {
      const meant = this.#hdf5.referredTo(bytes.slice(index * size, (index + 1) * size));
      const number = index + 1;
      const called = named === 'cell' ? `${path}{${number}}` : `${path.slice(0, field)}(${number})${path.slice(field)}`;
      if (meant === undefined) this.passedOver.push(called);
      else this.#variable(meant, called, depth + 1);
    }
    return true;
  }

  #text(where: string, path: string, extent: Extent): boolean {
    const layout = layoutOf(extent);
    const shape = extent.shape!;
    const count = shape.reduce((product, each) => product * each, 1);
    if (extent.type !== integer || layout === undefined || count > longestText || shape.length > 2) return false;
    const bytes = this.#whole(where, shape, layout.size);
    if (bytes === undefined) return false;
    const rows = shape[1] ?? 1;
    const lines = Array.from({ length: rows }, (_, row) =>
      wordsOf(numbersIn(bytes, layout.size, layout.real, row, count / rows, rows)),
    );
    this.texts.push({ path, text: lines.join('; ') });
    return true;
  }

  #whole(where: string, shape: readonly number[], size: number): Uint8Array | undefined {
    const from = shape.map(() => 0);
    return this.#hdf5.box(where, size, from, shape);
  }

  #classOf(where: string): string | undefined {
    const found = this.#hdf5.attribute(where, 'MATLAB_class');
    return found === undefined ? undefined : new TextDecoder().decode(found.bytes).replace(/\0.*$/s, '');
  }
}

function wordsOf(codes: Float64Array): string {
  return String.fromCharCode(...codes)
    .replaceAll('\0', ' ')
    .trim();
}
