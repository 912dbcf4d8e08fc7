import {
  type AnyField,
  type Field,
  type Fields,
  fieldOf,
  type Sheet,
  type Showing,
  type Stated,
  words,
} from '@soundpost/core';
import type { StatedValue } from '../design/stated-values.ts';

type TermAndValue = readonly [term: string, value: string];

/** Everything a sheet states, each with how it is known: `4 (nameplate, motor plate)`. */
export function statedFacts({ values }: Sheet, fields: Fields, showing: Showing): readonly TermAndValue[] {
  return Object.entries(fields).flatMap(([key, entry]: [string, AnyField]): readonly TermAndValue[] => {
    const value = values[key] as Stated<unknown> | undefined;
    if (value === undefined) return [];
    const how = howKnown(value);
    return [[words(key), `${statedText(value, fieldOf(entry), showing)}${how === '' ? '' : ` (${how})`}`]];
  });
}

/** A stated value by its field; where it is not known, who is to be asked and between which bounds it is believed. */
export function statedText(entry: Stated<unknown>, field: Field<unknown>, showing: Showing): string {
  if (entry.known) return field.show(entry.value, showing);
  const { ask, between } = entry;
  const bounds =
    between === undefined
      ? ''
      : `, believed between ${field.show(between.low, showing)} and ${field.show(between.high, showing)}`;
  return `unknown${bounds}${ask === undefined ? '' : `; ask ${ask}`}`;
}

export function howKnown(entry: StatedValue['entry']): string {
  return entry.known ? [entry.status, entry.source].filter((each) => each !== undefined).join(', ') : '';
}
