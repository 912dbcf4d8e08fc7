/** Where something stands in a file. Lines and columns count from 1; a column is a UTF-16 unit, as editors count. */
export interface Place {
  readonly line: number;
  readonly column: number;
  /** The names that lead there: `machines/P-301/motor`; elements of a list by their number, from 1. */
  readonly path: string;
}

/** A text, number or word as it was typed. */
export interface PlacedScalar extends Place {
  readonly kind: 'scalar';
  /** What was typed, without quotes: a tag `012` is still `012` here. */
  readonly source: string;
  /** What YAML makes of it: `012` is 12, `true` is true, nothing is null. */
  readonly value: string | number | boolean | null;
}

export interface PlacedEntry {
  readonly key: string;
  /** Where the key stands. */
  readonly at: Place;
  readonly value: Placed;
}

/** Keys to values, in the order of the file; a key stands there once. */
export interface PlacedMap extends Place {
  readonly kind: 'map';
  readonly entries: readonly PlacedEntry[];
}

export interface PlacedList extends Place {
  readonly kind: 'list';
  readonly elements: readonly Placed[];
}

/** What a file says, each part with its place, and nothing yet believed. */
export type Placed = PlacedScalar | PlacedMap | PlacedList;

export function entryOf(map: PlacedMap, key: string): PlacedEntry | undefined {
  return map.entries.find((each) => each.key === key);
}

/** The map without one of its keys: what is left for the next reader. */
export function without(map: PlacedMap, key: string): PlacedMap {
  return { ...map, entries: map.entries.filter((each) => each.key !== key) };
}

/** The last name of the path that leads there: the tag of a machine that stands under its tag. */
export function nameAt(place: Place): string {
  return place.path.slice(place.path.lastIndexOf('/') + 1);
}

/** How a placed value is called in an error. */
export function describePlaced(placed: Placed): string {
  if (placed.kind === 'map') return placed.entries.length === 0 ? 'an empty mapping' : 'a mapping';
  if (placed.kind === 'list') return placed.elements.length === 0 ? 'an empty list' : 'a list';
  return placed.source;
}

/** The values alone, without places; scalars as YAML means them. Objects have no prototype: no key can act on them. */
export function plainOf(placed: Placed): unknown {
  if (placed.kind === 'scalar') return placed.value;
  if (placed.kind === 'list') return placed.elements.map(plainOf);
  const plain: Record<string, unknown> = Object.create(null);
  for (const { key, value } of placed.entries) plain[key] = plainOf(value);
  return plain;
}

/** The same with scalars as they were typed, for the fields that read text. */
export function typedOf(placed: Placed): unknown {
  if (placed.kind === 'scalar') return placed.source;
  if (placed.kind === 'list') return placed.elements.map(typedOf);
  const typed: Record<string, unknown> = Object.create(null);
  for (const { key, value } of placed.entries) typed[key] = typedOf(value);
  return typed;
}
