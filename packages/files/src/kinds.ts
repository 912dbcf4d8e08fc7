import { Broken, type Fields, nearest, type Sheet } from '@soundpost/core';
import { mappingIn } from './collections.ts';
import { entryOf, type PlacedMap, without } from './placed.ts';
import { type Reader, type Reading, type Unread, unread } from './reader.ts';
import { beside, type MappingReader, type Parts, type RecordOf, record } from './record.ts';
import { sheet } from './sheet.ts';

/** One kind of a thing, and what reads the rest of its mapping. */
export interface KindReader<Kind extends string = string, T extends object = object> {
  readonly kind: Kind;
  readonly reader: MappingReader<T>;
}

export function kindReader<const Kind extends string, T extends object>(
  kind: Kind,
  reader: MappingReader<T>,
): KindReader<Kind, T> {
  return { kind, reader };
}

type OfKind<K> = K extends KindReader<infer Kind, infer T> ? T & { readonly kind: Kind } : never;

/** A mapping whose key `kind` says by which of the readers the other keys are read. */
export function byKind<const K extends readonly KindReader[]>(meaning: string, kinds: K): Reader<OfKind<K[number]>> {
  const readers = new Map(kinds.map((each) => [each.kind, each.reader]));
  const names = [...readers.keys()];
  if (names.length < kinds.length) throw new Broken('kinds have different names', { meaning });
  const expected = `${meaning}: a mapping with 'kind', one of: ${names.join(', ')}`;
  return {
    expected,
    schema: schemaOf(meaning, kinds),
    read: (placed, reading) => {
      const map = mappingIn(placed, reading, expected);
      if (map === unread) return unread;
      const kind = kindIn(map, meaning, names, reading);
      if (kind === unread) return unread;
      const rest = readers.get(kind)!.read(without(map, 'kind'), reading);
      // The kind chose the reader, so kind and content belong together as the type says.
      return rest === unread ? unread : ({ kind, ...rest } as OfKind<K[number]>);
    },
  };
}

function kindIn(map: PlacedMap, meaning: string, names: readonly string[], reading: Reading): string | Unread {
  const expected = `the kind of ${meaning}, one of: ${names.join(', ')}`;
  const entry = entryOf(map, 'kind');
  if (entry === undefined) return reading.refuse(map, { read: '', expected: `'kind': ${expected}` });
  if (entry.value.kind !== 'scalar') return reading.expected(entry.value, expected);
  const { source } = entry.value;
  if (names.includes(source)) return source;
  const near = nearest(source, names);
  const suggestion = near === undefined ? {} : { suggestion: `Did you mean '${near}'?` };
  return reading.refuse(entry.value, { read: source, expected, ...suggestion });
}

/** Chooses by `if` and `then`, so that an editor speaks of the faults of the one kind that was meant. */
function schemaOf(meaning: string, kinds: readonly KindReader[]) {
  const kind = { enum: kinds.map((each) => each.kind), description: `The kind of ${meaning}` };
  return {
    type: 'object',
    description: meaning,
    properties: { kind },
    required: ['kind'],
    allOf: kinds.map(({ kind, reader: { schema } }) => ({
      if: { properties: { kind: { const: kind } }, required: ['kind'] },
      // biome-ignore lint/suspicious/noThenProperty: a keyword of JSON Schema
      then: { ...schema, properties: { kind: true, ...Object(schema.properties) } },
    })),
  };
}

/** A kind as the core lists it: its word, and the fields of its data sheet. */
export interface SheetKind {
  readonly kind: string;
  readonly dataSheet: Fields;
}

/** A part of one of the kinds: the word, the filled-in sheet, and what every kind has beside it. */
export type PartOfKind<K, P extends Parts> = K extends SheetKind
  ? { readonly kind: K['kind']; readonly sheet: Sheet<K['dataSheet']> } & RecordOf<P>
  : never;

/**
 * The kinds of a list of the core, each by its own data sheet, whose fields stand beside `kind` and the `common` parts.
 * `of` names whose sheet it is.
 */
export function sheetsByKind<const K extends readonly SheetKind[], const P extends Parts = Record<never, never>>(
  meaning: string,
  kinds: K,
  of: (map: PlacedMap) => string,
  common?: P,
): Reader<PartOfKind<K[number], P>> {
  const readers = kinds.map(({ kind, dataSheet }) =>
    kindReader(kind, record(`${meaning} of kind ${kind}`, { ...common, sheet: beside(sheet(dataSheet, of)) })),
  );
  // The readers are made from the kinds one by one, which a mapped list does not tell the compiler.
  return byKind(meaning, readers) as unknown as Reader<PartOfKind<K[number], P>>;
}
