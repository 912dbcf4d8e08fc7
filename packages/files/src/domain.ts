import type { Stated } from '@soundpost/core';
import { entryOf, type Placed } from './placed.ts';
import { made, type Reader } from './reader.ts';

/** A number that has no meaning at zero or below: there it is an empty cell or a slip of the hand. */
export function aboveZero<T extends number>(reader: Reader<Stated<T>>): Reader<Stated<T>> {
  return bounded(
    reader,
    (value) => value > 0,
    'a value above zero',
    "Nothing is never read as zero; write 'unknown' where the value is not known.",
  );
}

/** A number that may be nothing, but not less. */
export function notBelowZero<T extends number>(reader: Reader<Stated<T>>): Reader<Stated<T>> {
  return bounded(reader, (value) => value >= 0, 'a value of zero or more', 'Was a dash meant, not a minus?');
}

function bounded<T extends number>(
  reader: Reader<Stated<T>>,
  fits: (value: number) => boolean,
  expected: string,
  suggestion: string,
): Reader<Stated<T>> {
  return made(reader, (read, placed, refuse) =>
    !read.known || fits(read.value) ? read : refuse(statedAt(placed), { read: read.written, expected, suggestion }),
  );
}

/** Where the value of a statement stands: itself, or beside its origin. */
export function statedAt(placed: Placed): Placed {
  return placed.kind === 'map' ? (entryOf(placed, 'value')?.value ?? placed) : placed;
}
