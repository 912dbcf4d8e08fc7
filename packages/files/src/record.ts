import { Broken, kebab, nearest } from '@soundpost/core';
import { mappingIn } from './collections.ts';
import type { Placed, PlacedMap } from './placed.ts';
import { type JsonSchema, type Reader, type Reading, type Unread, unread } from './reader.ts';

/** One key of a mapping, as its reader declares it: `running-speed`. */
export interface Key {
  readonly schema: JsonSchema;
  /** What stands there, for the sentence that misses it; undefined where it may be left out. */
  readonly required: string | undefined;
}

/** A reader of mappings whose keys are known. Strange keys are refused once, by the outermost of nested ones. */
export interface MappingReader<T> extends Reader<T> {
  readonly keys: ReadonlyMap<string, Key>;
  /** Reads its own keys and leaves the others alone. */
  readKeys(map: PlacedMap, reading: Reading): T | Unread;
}

/** A key that may be left out; the record then has no such property. */
export interface Left<T> {
  readonly leftOut: true;
  readonly reader: Reader<T>;
}

export function optionally<T>(reader: Reader<T>): Left<T> {
  return { leftOut: true, reader };
}

/** Part of a record whose keys stand in the same mapping as the keys beside it: a data sheet in a catalogue part. */
export interface Beside<T> {
  readonly beside: true;
  readonly reader: MappingReader<T>;
}

export function beside<T>(reader: MappingReader<T>): Beside<T> {
  return { beside: true, reader };
}

export type Parts = Readonly<Record<string, Reader<unknown> | Left<unknown> | Beside<unknown>>>;

type PartOf<P> = P extends Left<infer T> ? T : P extends Beside<infer T> ? T : P extends Reader<infer T> ? T : never;

/** What a record of these parts reads: what may be left out is an optional property. */
export type RecordOf<P extends Parts> = {
  readonly [K in keyof P as P[K] extends Left<unknown> ? never : K]: PartOf<P[K]>;
} & {
  readonly [K in keyof P as P[K] extends Left<unknown> ? K : never]?: PartOf<P[K]>;
} extends infer R
  ? { readonly [K in keyof R]: R[K] }
  : never;

/**
 * A mapping with known keys: `runningSpeed` here is `running-speed` in the file. `meaning` names the thing in errors
 * and to editors: `a machine`. Every fault in it is noted before it is given up.
 */
export function record<const P extends Parts>(meaning: string, parts: P): MappingReader<RecordOf<P>> {
  return mappingReader(meaning, keysOf(parts), (map, reading) => {
    const entries = new Map(map.entries.map((each) => [each.key, each.value]));
    const values: Record<string, unknown> = {};
    let whole = true;
    for (const [name, part] of Object.entries(parts)) {
      const value = readPart(part, entries.get(kebab(name)), map, reading);
      if (value === unread) whole = false;
      else if (value !== leftOut) values[name] = value;
    }
    // Every part was read by its own reader, so the values have the types of the parts.
    return whole ? (values as RecordOf<P>) : unread;
  });
}

const leftOut = Symbol('left out');

/** A required key that is missing is unread here, and noted by the reader of the whole mapping. */
function readPart(part: Parts[string], placed: Placed | undefined, map: PlacedMap, reading: Reading): unknown {
  if ('beside' in part) return part.reader.readKeys(map, reading);
  if ('leftOut' in part) return placed === undefined ? leftOut : part.reader.read(placed, reading);
  return placed === undefined ? unread : part.read(placed, reading);
}

function keysOf(parts: Parts): ReadonlyMap<string, Key> {
  const keys: [string, Key][] = [];
  for (const [name, part] of Object.entries(parts)) {
    if ('beside' in part) keys.push(...part.reader.keys);
    else if ('leftOut' in part) keys.push([kebab(name), { schema: part.reader.schema, required: undefined }]);
    else keys.push([kebab(name), { schema: part.schema, required: part.expected }]);
  }
  const map = new Map(keys);
  if (map.size < keys.length) {
    throw new Broken('a key belongs to one part of a record', { keys: keys.map(([key]) => key) });
  }
  return map;
}

/** A reader of mappings with these keys: strange and missing keys are noted here, the values read by `readKeys`. */
export function mappingReader<T>(
  meaning: string,
  keys: ReadonlyMap<string, Key>,
  readKeys: (map: PlacedMap, reading: Reading) => T | Unread,
): MappingReader<T> {
  const names = [...keys.keys()];
  const expected = `${meaning}: a mapping with ${listed(names)}`;
  return {
    expected,
    keys,
    schema: schemaOf(meaning, keys),
    readKeys,
    read: (placed, reading) => {
      const map = mappingIn(placed, reading, expected);
      if (map === unread) return unread;
      const meant = refuseStrangers(map, meaning, names, reading);
      let complete = meant.strangers === 0;
      for (const [key, { required }] of keys) {
        if (required === undefined || map.entries.some((entry) => entry.key === key)) continue;
        complete = false;
        if (meant.keys.has(key)) continue;
        reading.refuse(map, { read: '', expected: `'${key}' in ${meaning}: ${required}` });
      }
      const value = readKeys(map, reading);
      return complete ? value : unread;
    },
  };
}

function listed(names: readonly string[]): string {
  return names.length > 24 ? `${names.slice(0, 24).join(', ')} and ${names.length - 24} more` : names.join(', ');
}

/** Notes each key that is not known; gives back the missing keys that were probably meant, so that none is noted twice. */
function refuseStrangers(map: PlacedMap, meaning: string, names: readonly string[], reading: Reading) {
  const strangers = map.entries.filter((entry) => !names.includes(entry.key));
  const free = names.filter((name) => !map.entries.some((entry) => entry.key === name));
  const meant = new Set<string>();
  for (const { key, at } of strangers) {
    const near = nearest(kebabbed(key), free) ?? nearest(kebabbed(key), names);
    if (near !== undefined) meant.add(near);
    reading.refuse(
      { ...at, path: map.path },
      {
        read: key,
        expected: `a key of ${meaning}: ${listed(names)}`,
        ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
      },
    );
  }
  return { strangers: strangers.length, keys: meant };
}

/** `Running_Speed`, `runningSpeed`, `running speed` as the key that was probably meant. */
function kebabbed(key: string): string {
  return kebab(key.slice(0, 60).trim()).replace(/[\s_]+/g, '-');
}

function schemaOf(meaning: string, keys: ReadonlyMap<string, Key>): JsonSchema {
  const required = [...keys].flatMap(([key, each]) => (each.required === undefined ? [] : [key]));
  return {
    type: 'object',
    description: meaning,
    properties: Object.fromEntries([...keys].map(([key, each]) => [key, each.schema])),
    ...(required.length > 0 ? { required } : {}),
    additionalProperties: false,
  };
}
