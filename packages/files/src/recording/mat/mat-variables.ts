import type { ByteSource } from '../byte-source.ts';
import { refusedAt } from '../open-recording.ts';
import { viewOf } from '../wav/riff-chunks.ts';
import { type ByteStream, plainStream, unpackedStream } from './mat-elements.ts';

/** A stretch of the file that holds one variable, packed or not. */
export interface Stretch {
  readonly from: number;
  readonly end: number;
  readonly packed: boolean;
}

/** Numbers of one variable: their type and where they stand in the unpacked stretch. */
export interface Numbers {
  readonly type: number;
  readonly from: number;
  readonly bytes: number;
}

/** A variable of numbers: `test.channel(2).data`. */
export interface NumberVariable {
  readonly path: string;
  readonly dimensions: readonly number[];
  readonly stretch: Stretch;
  readonly real: Numbers;
  readonly imaginary?: Numbers;
  /** Its value, where it is a single number. */
  readonly single?: number;
}

export interface TextVariable {
  readonly path: string;
  readonly text: string;
}

export interface Variables {
  readonly numbers: readonly NumberVariable[];
  readonly texts: readonly TextVariable[];
  /** Paths of what is of no use here: objects, sparse matrices. */
  readonly passedOver: readonly string[];
}

/** Deeper or more than any recorder nests or names its variables. */
const deepest = 8;
const mostVariables = 20_000;
const longestText = 4096;
const longestNames = 65_536;

const [miMatrix, miUtf8, miUtf16, miUtf32] = [14, 16, 17, 18];
const [cell, struct, character, lastNumeric, firstNumeric] = [1, 2, 4, 15, 6];

/** Bytes of one number of each storage type of the format. */
export const widthOf: Readonly<Record<number, number>> = {
  1: 1,
  2: 1,
  3: 2,
  4: 2,
  5: 4,
  6: 4,
  7: 4,
  9: 8,
  12: 8,
  13: 8,
};

export function streamOf(source: ByteSource, { from, end, packed }: Stretch): ByteStream {
  return packed ? unpackedStream(source, from, end) : plainStream(source, from, end);
}

interface Tag {
  readonly type: number;
  readonly bytes: number;
  /** The four bytes of a small element, which stand in the tag itself. */
  readonly inside?: Uint8Array;
}

/** Walks the variables of a MAT file of version 5 without reading their numbers. */
export class VariableWalk {
  readonly numbers: NumberVariable[] = [];
  readonly texts: TextVariable[] = [];
  readonly passedOver: string[] = [];
  readonly #source: ByteSource;
  readonly #file: string;
  readonly #littleEndian: boolean;
  #stretch: Stretch = { from: 0, end: 0, packed: false };
  #stream: ByteStream | undefined;
  #at = 0;
  #seen = 0;

  constructor(source: ByteSource, file: string, littleEndian: boolean) {
    this.#source = source;
    this.#file = file;
    this.#littleEndian = littleEndian;
  }

  /** Walks the variable of one stretch; what is cut off or damaged ends the walk of it. Throws Refusal. */
  async walk(stretch: Stretch): Promise<void> {
    this.#stretch = stretch;
    this.#at = 0;
    this.#stream = streamOf(this.#source, stretch);
    try {
      const tag = await this.#tag();
      if (tag?.type === miMatrix) await this.#matrix(tag.bytes, undefined, 0);
    } finally {
      await this.#stream.close();
    }
  }

  async #take(length: number): Promise<Uint8Array> {
    const bytes = await this.#stream!.take(length);
    this.#at += bytes.length;
    return bytes;
  }

  async #skipTo(place: number): Promise<void> {
    if (place <= this.#at) return;
    await this.#stream!.skip(place - this.#at);
    this.#at = place;
  }

  async #tag(): Promise<Tag | undefined> {
    const bytes = await this.#take(8);
    if (bytes.length < 8) return undefined;
    const view = viewOf(bytes);
    const type = view.getUint32(0, this.#littleEndian);
    if (type >>> 16 !== 0) return { type: type & 0xffff, bytes: Math.min(4, type >>> 16), inside: bytes.subarray(4) };
    return { type, bytes: view.getUint32(4, this.#littleEndian) };
  }

  /** The content of a small element, and the place after it. */
  async #element(most: number): Promise<{ readonly type: number; readonly content: Uint8Array } | undefined> {
    const tag = await this.#tag();
    if (tag === undefined) return undefined;
    if (tag.inside !== undefined) return { type: tag.type, content: tag.inside.subarray(0, tag.bytes) };
    const end = this.#at + padded(tag.bytes);
    const content = await this.#take(Math.min(tag.bytes, most));
    await this.#skipTo(end);
    return { type: tag.type, content };
  }

  async #matrix(bytes: number, given: string | undefined, depth: number): Promise<void> {
    const end = this.#at + padded(bytes);
    this.#seen++;
    if (this.#seen > mostVariables || depth > deepest) {
      throw refusedAt(this.#file, `byte ${this.#stretch.from}`, {
        read: depth > deepest ? `variables nested ${depth} deep` : `${this.#seen} variables`,
        expected: `at most ${mostVariables} variables, nested at most ${deepest} deep`,
      });
    }
    // An empty matrix may be written as nothing at all.
    if (bytes === 0) return;
    const flags = await this.#element(16);
    const sizes = await this.#element(32 * 4);
    const named = await this.#element(256);
    if (flags === undefined || sizes === undefined || named === undefined || flags.content.length < 4) return;
    const flag = viewOf(flags.content).getUint32(0, this.#littleEndian);
    const dimensions = this.#integers(sizes.content);
    const path = given ?? (wordsIn(named.content) || 'unnamed');
    const sort = flag & 0xff;
    if (sort >= firstNumeric && sort <= lastNumeric) await this.#numbers(path, dimensions, (flag & 0x800) !== 0);
    else if (sort === character) await this.#text(path);
    else if (sort === cell) await this.#cells(path, dimensions, depth, end);
    else if (sort === struct) await this.#fields(path, dimensions, depth, end);
    else this.passedOver.push(path);
    await this.#skipTo(end);
  }

  #integers(content: Uint8Array): readonly number[] {
    const view = viewOf(content);
    return Array.from({ length: Math.floor(content.length / 4) }, (_, index) =>
      view.getInt32(index * 4, this.#littleEndian),
    );
  }

  async #numbers(path: string, dimensions: readonly number[], complex: boolean): Promise<void> {
    const real = await this.#tag();
    if (real === undefined || widthOf[real.type] === undefined) {
      this.passedOver.push(path);
      return;
    }
    const from = real.inside === undefined ? this.#at : this.#at - 4;
    const after = real.inside === undefined ? from + padded(real.bytes) : this.#at;
    const count = dimensions.reduce((product, each) => product * each, 1);
    const single = count === 1 ? await this.#single(real, from) : undefined;
    let imaginary: Numbers | undefined;
    if (complex) {
      await this.#skipTo(after);
      const tag = await this.#tag();
      if (tag !== undefined && widthOf[tag.type] !== undefined) {
        imaginary = { type: tag.type, from: tag.inside === undefined ? this.#at : this.#at - 4, bytes: tag.bytes };
      }
    }
    this.numbers.push({
      path,
      dimensions,
      stretch: this.#stretch,
      real: { type: real.type, from, bytes: real.bytes },
      ...(imaginary === undefined ? {} : { imaginary }),
      ...(single === undefined ? {} : { single }),
    });
  }

  async #single(tag: Tag, from: number): Promise<number | undefined> {
    const width = widthOf[tag.type]!;
    const bytes = tag.inside ?? (await this.#take(width - Math.max(0, this.#at - from)));
    return bytes.length < width ? undefined : numberAt(viewOf(bytes), 0, tag.type, this.#littleEndian);
  }

  async #text(path: string): Promise<void> {
    const element = await this.#element(longestText);
    if (element === undefined) return;
    this.texts.push({ path, text: textIn(element.type, element.content, this.#littleEndian) });
  }

  async #cells(path: string, dimensions: readonly number[], depth: number, end: number): Promise<void> {
    const count = dimensions.reduce((product, each) => product * each, 1);
    for (let index = 1; index <= count && this.#at < end; index++) {
      if (!(await this.#inner(`${path}{${index}}`, depth))) return;
    }
  }

  async #fields(path: string, dimensions: readonly number[], depth: number, end: number): Promise<void> {
    const width = await this.#element(4);
    const names = await this.#element(longestNames);
    if (width === undefined || names === undefined || width.content.length < 4) return;
    const length = viewOf(width.content).getInt32(0, this.#littleEndian);
    if (length <= 0) return;
    const fields = Array.from({ length: Math.floor(names.content.length / length) }, (_, index) =>
      wordsIn(names.content.subarray(index * length, (index + 1) * length)),
    );
    const count = dimensions.reduce((product, each) => product * each, 1);
    for (let index = 1; index <= count && this.#at < end; index++) {
      for (const field of fields) {
        if (!(await this.#inner(`${path}${count > 1 ? `(${index})` : ''}.${field}`, depth))) return;
      }
      if (fields.length === 0) return;
    }
  }

  /** A variable inside another; false where there is none, so that the walk of the outer one ends. */
  async #inner(path: string, depth: number): Promise<boolean> {
    const tag = await this.#tag();
    if (tag?.type !== miMatrix || tag.inside !== undefined) return false;
    await this.#matrix(tag.bytes, path, depth + 1);
    return true;
  }
}

/** Elements stand at multiples of eight bytes. */
export function padded(bytes: number): number {
  return Math.ceil(bytes / 8) * 8;
}

export function numberAt(view: DataView, at: number, type: number, littleEndian: boolean): number {
  switch (type) {
    case 1:
      return view.getInt8(at);
    case 2:
      return view.getUint8(at);
    case 3:
      return view.getInt16(at, littleEndian);
    case 4:
      return view.getUint16(at, littleEndian);
    case 5:
      return view.getInt32(at, littleEndian);
    case 6:
      return view.getUint32(at, littleEndian);
    case 7:
      return view.getFloat32(at, littleEndian);
    case 12:
      return Number(view.getBigInt64(at, littleEndian));
    case 13:
      return Number(view.getBigUint64(at, littleEndian));
    default:
      return view.getFloat64(at, littleEndian);
  }
}

function wordsIn(bytes: Uint8Array): string {
  const end = bytes.indexOf(0);
  return new TextDecoder('utf-8').decode(end < 0 ? bytes : bytes.subarray(0, end)).trim();
}

function textIn(type: number, content: Uint8Array, littleEndian: boolean): string {
  if (type === miUtf8 || widthOf[type] === 1) return new TextDecoder('utf-8').decode(content).trim();
  const width = type === miUtf16 ? 2 : type === miUtf32 ? 4 : (widthOf[type] ?? 2);
  const view = viewOf(content);
  const codes = Array.from({ length: Math.floor(content.length / width) }, (_, index) => {
    const code = width === 4 ? view.getUint32(index * 4, littleEndian) : view.getUint16(index * 2, littleEndian);
    return code > 0x10_ffff ? 0xfffd : code;
  });
  return String.fromCodePoint(...codes).trim();
}
