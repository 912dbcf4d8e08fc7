import { type Answer, answer, type Missing, unanswered } from './answer.ts';
import type { Field } from './field.ts';
import { words } from './names.ts';

/** How a stated value came to be known. */
export const statuses = ['measured', 'nameplate', 'drawing', 'certificate', 'data sheet', 'assumed'] as const;
export type Status = (typeof statuses)[number];

/** What somebody stated: a value as written, with how it is known and from where; or that it is not known. */
export type Stated<T> =
  | {
      readonly known: true;
      readonly value: T;
      readonly written: string;
      readonly status?: Status;
      readonly source?: string;
    }
  | {
      readonly known: false;
      /** Who could answer. */
      readonly ask?: string;
      /** The bounds between which it is believed to lie, as written. */
      readonly between?: { readonly low: T; readonly high: T };
    };

export function stated<T>(value: T, written = '', status?: Status, source?: string): Stated<T> {
  return {
    known: true,
    value,
    written,
    ...(status === undefined ? {} : { status }),
    ...(source === undefined ? {} : { source }),
  };
}

export const notStated: Stated<never> = { known: false };

/** A field that may be left out where it does not apply. */
export interface Optional<T> {
  readonly optional: true;
  readonly field: Field<T>;
}

export function optional<T>(field: Field<T>): Optional<T> {
  return { optional: true, field };
}

export type AnyField = Field<unknown> | Optional<unknown>;
export type Fields = Readonly<Record<string, AnyField>>;
export type ValueOf<F> = F extends Optional<infer T> ? T : F extends Field<infer T> ? T : never;

type StatedEntry<E> =
  E extends Optional<infer T> ? Stated<T> | undefined : E extends Field<infer T> ? Stated<T> : never;

/** The values of a set of fields: a required one always stands there, if only as unknown. */
export type StatedValues<F extends Fields> = { readonly [K in keyof F]: StatedEntry<F[K]> };

export function fieldOf(entry: AnyField): Field<unknown> {
  return 'optional' in entry ? entry.field : entry;
}

export function isOptional(entry: AnyField): boolean {
  return 'optional' in entry;
}

/** A filled-in data sheet: whose it is, and what it states. */
export interface Sheet<F extends Fields = Fields> {
  readonly of: string;
  readonly values: StatedValues<F>;
}

type Known<S> = NonNullable<S> extends Stated<infer T> ? T : never;

/** Computes from named fields of a sheet; what is not stated there comes back as missing, all of it at once. */
export function ask<F extends Fields, K extends keyof F & string, R>(
  sheet: Sheet<F>,
  names: readonly K[],
  compute: (values: { readonly [N in K]: Known<StatedValues<F>[N]> }) => R,
): Answer<R> {
  const missing: Missing[] = [];
  const values: Record<string, unknown> = {};
  for (const name of names) {
    const entry = sheet.values[name] as Stated<unknown> | undefined;
    if (entry?.known === true) values[name] = entry.value;
    else missing.push({ of: sheet.of, what: words(name) });
  }
  return missing.length > 0 ? unanswered(missing) : answer(compute(values as never));
}

/** A stated value as an answer, named by where it stands. */
export function answerOf<T>(entry: Stated<T> | undefined, of: string, what: string): Answer<T> {
  return entry?.known === true ? answer(entry.value) : unanswered([{ of, what }]);
}

/** An optional field as an answer: nothing where it was left out, but unknown where it stands there as unknown. */
export function answerIfStated<T>(entry: Stated<T> | undefined, of: string, what: string): Answer<T | undefined> {
  return entry === undefined ? answer(undefined) : answerOf(entry, of, what);
}

/** The value where it is stated, otherwise nothing: for optional fields whose absence means 'has none'. */
export function valueIfStated<T>(entry: Stated<T> | undefined): T | undefined {
  return entry?.known === true ? entry.value : undefined;
}
