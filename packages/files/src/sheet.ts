import {
  type Fields,
  fieldOf,
  isOptional,
  kebab,
  notStated,
  type Sheet,
  type Stated,
  type StatedValues,
} from '@soundpost/core';
import { entryOf, type PlacedMap } from './placed.ts';
import { unread } from './reader.ts';
import { type Key, type MappingReader, mappingReader } from './record.ts';
import { stated } from './stated.ts';

/**
 * A data sheet: fields under their names, `mountedResonance` as `mounted-resonance`. A field that is missing is not
 * stated, which blocks nothing here: the rule that needs it says so. `of` names whose sheet it is: `transducer ACC-100`.
 */
export function sheet<const F extends Fields>(
  fields: F,
  of: string | ((map: PlacedMap) => string),
  meaning = 'a data sheet',
): MappingReader<Sheet<F>> {
  const readers = Object.entries(fields).map(([name, entry]) => ({
    name,
    key: kebab(name),
    absent: isOptional(entry) ? undefined : notStated,
    reader: stated(fieldOf(entry)),
  }));
  const keys = new Map(
    readers.map(({ key, reader }): [string, Key] => [key, { schema: reader.schema, required: undefined }]),
  );
  return mappingReader(meaning, keys, (map, reading) => {
    const values: Record<string, Stated<unknown> | undefined> = {};
    let whole = true;
    for (const { name, key, absent, reader } of readers) {
      const entry = entryOf(map, key);
      const value = entry === undefined ? absent : reader.read(entry.value, reading);
      if (value === unread) whole = false;
      else values[name] = value;
    }
    if (!whole) return unread;
    // Every field was read by itself, so the values have the types of the fields.
    return { of: typeof of === 'string' ? of : of(map), values: values as StatedValues<F> };
  });
}
