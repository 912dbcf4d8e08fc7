import {
  choiceField,
  countField,
  type Field,
  flagField,
  pointDecimals,
  Refusal,
  type RefusalReason,
  textField,
  type Writing,
} from '@soundpost/core';
import type { Refusals } from './file-refusal.ts';
import { describePlaced, type Place, type Placed, typedOf } from './placed.ts';
import { commentSuggestion, type TextFile } from './text-file.ts';

/** A JSON Schema, draft 2020-12: what an editor checks while the file is typed. */
export type JsonSchema = Readonly<Record<string, unknown>>;

/** Comes back in place of a value that could not be read; why stands among the refusals. */
export const unread: unique symbol = Symbol('unread');
export type Unread = typeof unread;

/** What a reader needs beside the place it reads: how numbers are written, and where to say what is wrong. */
export class Reading {
  readonly text: TextFile;
  readonly writing: Writing;
  readonly #refusals: Refusals;

  constructor(text: TextFile, refusals: Refusals, writing: Writing = pointDecimals) {
    this.text = text;
    this.writing = writing;
    this.#refusals = refusals;
  }

  /** Notes what is wrong at a place and goes on: `return reading.refuse(placed, {…})`. */
  refuse(place: Place, reason: RefusalReason): Unread {
    this.#refusals.add(place, reason);
    return unread;
  }

  /** Refuses a placed value by what it is: `read a mapping, expected …`. */
  expected(placed: Placed, expected: string): Unread {
    const missing = placed.kind === 'scalar' && placed.source === '';
    const suggestion = missing ? commentSuggestion(this.text, placed) : undefined;
    const read = describePlaced(placed);
    return this.refuse(placed, { read, expected, ...(suggestion === undefined ? {} : { suggestion }) });
  }

  /** Runs what may throw a core Refusal, and gives that Refusal its place. */
  attempt<T>(place: Place, compute: () => T): T | Unread {
    try {
      return compute();
    } catch (error) {
      if (error instanceof Refusal) return this.refuse(place, error.reason);
      throw error;
    }
  }
}

/** Reads one kind of thing from a placed value, and describes it to editors. */
export interface Reader<T> {
  /** What it reads, as it stands in an error: `a mapping with 'kind' and …`. */
  readonly expected: string;
  readonly schema: JsonSchema;
  read(placed: Placed, reading: Reading): T | Unread;
}

/** The type a reader gives. */
export type ReadBy<R> = R extends Reader<infer T> ? T : never;

/**
 * A field of the core as it stands, without status and source. It reads what was typed: a tag `012` stays `012`, and
 * no number was rounded on the way.
 */
export function plain<T>(field: Field<T>): Reader<T> {
  return {
    expected: field.expected,
    schema: fieldSchema(field),
    read: (placed, reading) => readField(field, placed, reading),
  };
}

export function readField<T>(field: Field<T>, placed: Placed, reading: Reading): T | Unread {
  const empty = placed.kind === 'scalar' && (placed.value === null || placed.source.trim() === '');
  if (empty) return reading.expected(placed, field.expected);
  const yesOrNo = placed.kind === 'scalar' && typeof placed.value === 'boolean' && field.type === 'flag';
  try {
    return field.read(yesOrNo ? placed.value : typedOf(placed), reading.writing);
  } catch (error) {
    if (error instanceof Refusal) return reading.refuse(placeOf(error.reason, placed), error.reason);
    throw error;
  }
}

/** Where in a collection the text stands that a field refused; the collection itself if it is not to be found. */
function placeOf(reason: RefusalReason, placed: Placed): Place {
  if (placed.kind !== 'map') return placed;
  for (const { key, at, value } of placed.entries) {
    if (key === reason.read) return at;
    if (value.kind === 'scalar' && value.source === reason.read) return value;
  }
  return placed;
}

/** The schema of a field, widened by what YAML makes of the same keystrokes: `tag: 012` is a number to an editor. */
export function fieldSchema(field: Field<unknown>): JsonSchema {
  const { schema } = field;
  const examples = field.example === '' || schema.examples !== undefined ? {} : exampleFor(field);
  if (field.type === 'text') return { ...schema, type: ['string', 'number', 'boolean'], ...examples };
  if (field.type === 'count') {
    return { ...schema, type: ['integer', 'string'], pattern: '^\\s*\\d{1,9}\\s*$', ...examples };
  }
  if (field.type === 'choice' && Array.isArray(schema.enum)) {
    const numbers = schema.enum.filter((each) => /^\d+$/.test(String(each))).map(Number);
    return { ...schema, enum: [...schema.enum, ...numbers] };
  }
  return { ...schema, ...examples };
}

function exampleFor(field: Field<unknown>): JsonSchema {
  if (field.type === 'text' && field.example === 'text') return {};
  const usable = field.type === 'count' || field.schema.type === 'string' || Array.isArray(field.schema.type);
  if (!usable) return {};
  return { examples: [field.type === 'count' ? Number(field.example) : field.example] };
}

interface Options {
  readonly example?: string;
}

/** A text as it was typed. */
export const text = (meaning: string, options: Options = {}) => plain(textField(meaning, options));

/** One of a list of words. */
export const choice = <const Choice extends string>(choices: readonly Choice[], meaning: string) =>
  plain(choiceField(choices, meaning));

/** A whole number. */
export const count = (meaning: string, options: Options & { readonly least?: number } = {}) =>
  plain(countField(meaning, options));

/** Yes or no. */
export const flag = (meaning: string) => plain(flagField(meaning));

/**
 * What another reader gives, made into something else: the record of the core from the parts read. A Refusal thrown
 * there gets the place of the whole; `refuse` says what is wrong at a place of its own and lets the reading go on.
 */
export function made<T, U>(
  reader: Reader<T>,
  make: (value: T, placed: Placed, refuse: (place: Place, reason: RefusalReason) => Unread) => U | Unread,
): Reader<U> {
  return {
    expected: reader.expected,
    schema: reader.schema,
    read: (placed, reading) => {
      const value = reader.read(placed, reading);
      if (value === unread) return unread;
      return reading.attempt(placed, () => make(value, placed, (place, reason) => reading.refuse(place, reason)));
    },
  };
}

/** A value together with where it stands: for names that are looked up once the whole file is read. */
export interface WithPlace<T> {
  readonly value: T;
  readonly at: Placed;
}

export function withPlace<T>(reader: Reader<T>): Reader<WithPlace<T>> {
  return made(reader, (value, at) => ({ value, at }));
}
