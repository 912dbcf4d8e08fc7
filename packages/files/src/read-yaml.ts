import { Broken, choiceField, type Writing } from '@soundpost/core';
import { Refusals } from './file-refusal.ts';
import { entryOf, type Placed, without } from './placed.ts';
import { type JsonSchema, plain, type Reader, Reading, unread } from './reader.ts';
import { largestFile, textFile } from './text-file.ts';
import { placedYaml } from './yaml-document.ts';

/** What a file says, and how it writes its numbers. */
export interface ReadFile<T> {
  readonly value: T;
  readonly writing: Writing;
}

const decimals = plain(choiceField(['point', 'comma'], 'How numbers are written in this file: 3.5 or 3,5'));

/**
 * Reads a YAML file the whole way: bytes, text, placed tree, record. Everything wrong with it is thrown together as
 * UnreadableFile. A key `decimals: comma` at the top of the file says how its numbers are written; without it they have
 * a decimal point, and a comma is refused.
 */
export function readYaml<T>(bytes: Uint8Array, file: string, reader: Reader<T>, largest = largestFile): ReadFile<T> {
  const text = textFile(bytes, file, largest);
  const refusals = new Refusals(text);
  const root = placedYaml(text, refusals);
  const { writing, rest } = writingIn(root, new Reading(text, refusals));
  const value = reader.read(rest, new Reading(text, refusals, writing));
  refusals.throwIfAny();
  if (value === unread) throw new Broken('a reader that gives nothing says why', { file });
  return { value, writing };
}

function writingIn(root: Placed, reading: Reading): { writing: Writing; rest: Placed } {
  const entry = root.kind === 'map' ? entryOf(root, 'decimals') : undefined;
  if (root.kind !== 'map' || entry === undefined) return { writing: { decimal: 'point' }, rest: root };
  const decimal = decimals.read(entry.value, reading);
  return { writing: { decimal: decimal === unread ? 'point' : decimal }, rest: without(root, 'decimals') };
}

/** The schema of a whole file, with the key every file may have, ready to be written out for editors. */
export function fileSchema(reader: Reader<unknown>, title: string): JsonSchema {
  const { schema } = reader;
  const properties =
    schema.type === 'object' ? { properties: { decimals: decimals.schema, ...Object(schema.properties) } } : {};
  return { $schema: 'https://json-schema.org/draft/2020-12/schema', title, ...schema, ...properties };
}
