import type { Placed, PlacedEntry, PlacedMap } from './placed.ts';
import { type JsonSchema, type Reader, type Reading, type Unread, unread } from './reader.ts';

interface HowMany {
  readonly least?: number;
  readonly most?: number;
}

/** A list of like things. */
export function listOf<T>(
  element: Reader<T>,
  meaning: string,
  { least = 0, most }: HowMany = {},
): Reader<readonly T[]> {
  const expected = `a list: ${meaning}`;
  return {
    expected,
    schema: {
      type: 'array',
      description: meaning,
      items: element.schema,
      ...(least > 0 ? { minItems: least } : {}),
      ...(most === undefined ? {} : { maxItems: most }),
    },
    read: (placed, reading) => {
      if (placed.kind !== 'list') {
        const suggestion = "Begin each element with '- ', or put them in [ ].";
        return placed.kind === 'scalar' && placed.value !== null
          ? reading.refuse(placed, { read: placed.source, expected, suggestion })
          : reading.expected(placed, expected);
      }
      const { length } = placed.elements;
      if (length < least) return reading.refuse(placed, { read: counted(length), expected: `at least ${least}` });
      if (most !== undefined && length > most) {
        return reading.refuse(placed, { read: counted(length), expected: `at most ${most}` });
      }
      return allOf(placed.elements.map((each) => element.read(each, reading)));
    },
  };
}

function counted(length: number): string {
  return length === 1 ? 'a list of 1 element' : `a list of ${length} elements`;
}

function allOf<T>(values: readonly (T | Unread)[]): readonly T[] | Unread {
  return values.every((each): each is T => each !== unread) ? values : unread;
}

const longestName = 80;
const nameSchema: JsonSchema = { minLength: 1, maxLength: longestName, pattern: '^[^/]+$' };

/** Things under names the writer gives: tags of machines, names of catalogue parts. The order of the file is kept. */
export function mapOf<T>(value: Reader<T>, meaning: string): Reader<ReadonlyMap<string, T>> {
  return namesTo(value, meaning, (entries) => new Map(entries));
}

/** The same as a list of records, each with the name it stands under in `property`. */
export function named<T extends object, const Property extends string>(
  value: Reader<T>,
  property: Property,
  meaning: string,
): Reader<readonly (T & { readonly [P in Property]: string })[]> {
  type Named = T & { readonly [P in Property]: string };
  return namesTo(value, meaning, (entries) =>
    entries.map(([name, each]) => ({ [property]: name, ...each }) as unknown as Named),
  );
}

function namesTo<T, U>(
  value: Reader<T>,
  meaning: string,
  gather: (entries: readonly (readonly [string, T])[]) => U,
): Reader<U> {
  const expected = `a mapping from name to content: ${meaning}`;
  return {
    expected,
    schema: { type: 'object', description: meaning, propertyNames: nameSchema, additionalProperties: value.schema },
    read: (placed, reading) => {
      const map = mappingIn(placed, reading, expected);
      if (map === unread) return unread;
      const read = map.entries.map((entry): readonly [string, T] | Unread => {
        const fit = isName(entry, reading);
        const content = value.read(entry.value, reading);
        return fit && content !== unread ? [entry.key, content] : unread;
      });
      const entries = allOf(read);
      return entries === unread ? unread : gather(entries);
    },
  };
}

/** Names are joined by '/' to paths and stand in tables and file names, so they are short and hold none. */
function isName({ key, at }: PlacedEntry, reading: Reading): boolean {
  if (key.length <= longestName && !key.includes('/') && key === key.trim()) return true;
  reading.refuse(at, {
    read: key,
    expected: `a name of at most ${longestName} characters, without '/' and without spaces at its ends`,
  });
  return false;
}

export function mappingIn(placed: Placed, reading: Reading, expected: string): PlacedMap | Unread {
  return placed.kind === 'map' ? placed : reading.expected(placed, expected);
}
