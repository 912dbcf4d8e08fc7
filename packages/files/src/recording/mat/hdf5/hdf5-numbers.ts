import type { Extent, StoredAs } from './hdf5-library.ts';

/** The library's numbers of the classes of types. */
const [integer, float, compound] = [0, 1, 6];

/** How one number of a variable stands in the bytes of its dataset. */
export interface NumberLayout {
  /** Bytes from one number to the next. */
  readonly size: number;
  readonly real: PartLayout;
  readonly imaginary?: PartLayout;
}

interface PartLayout {
  readonly at: number;
  readonly read: (view: DataView, at: number) => number;
}

const integers: Readonly<Record<number, readonly [PartLayout['read'], PartLayout['read']]>> = {
  1: [(view, at) => view.getUint8(at), (view, at) => view.getInt8(at)],
  2: [(view, at) => view.getUint16(at, true), (view, at) => view.getInt16(at, true)],
  4: [(view, at) => view.getUint32(at, true), (view, at) => view.getInt32(at, true)],
  8: [(view, at) => Number(view.getBigUint64(at, true)), (view, at) => Number(view.getBigInt64(at, true))],
};

const floats: Readonly<Record<number, PartLayout['read']>> = {
  4: (view, at) => view.getFloat32(at, true),
  8: (view, at) => view.getFloat64(at, true),
};

function part({ type, size, signed }: StoredAs, at: number): PartLayout | undefined {
  const read = type === integer ? integers[size]?.[signed ? 1 : 0] : type === float ? floats[size] : undefined;
  return read === undefined ? undefined : { at, read };
}

/** Numbers, or pairs of a real and an imaginary part; nothing where it is neither. */
export function layoutOf(as: Extent | StoredAs): NumberLayout | undefined {
  if (as.type !== compound) {
    const real = part(as, 0);
    return real === undefined ? undefined : { size: as.size, real };
  }
  const parts = ['real', 'imag'].map((called) => {
    const member = as.compound_type?.members.find(({ name }) => name === called);
    // The library turns the bytes of single numbers about, not those of pairs.
    if (member?.littleEndian !== true || member.offset + member.size > as.size) return undefined;
    return part(member, member.offset);
  });
  const [real, imaginary] = parts;
  return real === undefined || imaginary === undefined ? undefined : { size: as.size, real, imaginary };
}

/** Every so many-th number of the bytes, from one on. */
export function numbersIn(
  bytes: Uint8Array,
  size: number,
  { at, read }: PartLayout,
  from: number,
  count: number,
  step = 1,
): Float64Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const numbers = new Float64Array(count);
  for (let index = 0; index < count; index++) numbers[index] = read(view, (from + index * step) * size + at);
  return numbers;
}
