import {
  type Answer,
  type Field,
  type Fields,
  fieldOf,
  type Level,
  type QuantityName,
  type Sheet,
  type Stated,
  showLevel,
  showQuantity,
  words,
} from '@soundpost/core';
import { typedNumber } from '../derivation/explained.ts';
import { opened } from '../derivation/opened.ts';
import { type Html, html, type Piece } from './html.ts';
import { type Setting, unknown } from './setting.ts';

/** An answer as shown, or the word unknown with what is missing. */
export function answered<T>(answer: Answer<T> | undefined, show: (value: T) => Piece): Piece {
  if (answer === undefined) return '—';
  return answer.known ? show(answer.value) : unknown(answer.missing);
}

export function quantityAnswered(name: QuantityName, answer: Answer<number> | undefined, setting: Setting): Piece {
  return answered(answer, (value) => showQuantity(name, value, setting.showing));
}

export function levelAnswered(answer: Answer<Level> | undefined, setting: Setting): Piece {
  return answered(answer, (value) => showLevel(value, setting.showing));
}

/** A stated value by its field; where it is not known, who is to be asked and between which bounds it is believed. */
export function statedShown(entry: Stated<unknown> | undefined, field: Field<unknown>, setting: Setting): Piece {
  if (entry === undefined) return '—';
  if (entry.known) return field.show(entry.value, setting.showing);
  const { ask, between } = entry;
  const bounds: Html | undefined =
    between === undefined
      ? undefined
      : html`, believed between ${field.show(between.low, setting.showing)} and ${field.show(between.high, setting.showing)}`;
  return html`${unknown()}${bounds}${ask === undefined ? undefined : html`; ask ${ask}`}`;
}

/** `4 (nameplate, motor plate)`. */
export function withSource(
  value: Stated<unknown>,
  field: Field<unknown>,
  of: string,
  what: string,
  setting: Setting,
): Html {
  const how = value.known ? [value.status, value.source].filter((each) => each !== undefined).join(', ') : '';
  return html`${statedOpened(value, field, of, what, setting)}${how === '' ? undefined : html` <span class="quiet">(${how})</span>`}`;
}

/** The same, and where it is known it opens to where it was typed. */
export function statedOpened(
  entry: Stated<unknown> | undefined,
  field: Field<unknown>,
  of: string,
  what: string,
  setting: Setting,
): Piece {
  const shown = statedShown(entry, field, setting);
  if (entry?.known !== true || typeof shown !== 'string' || !/\d/.test(shown)) return shown;
  return opened(shown, () => typedNumber(what, of, entry, shown, field.meaning), setting);
}

/** Everything a sheet states, as terms and values with how they are known: for a list of facts. */
export function sheetFacts({ of, values }: Sheet, fields: Fields, setting: Setting): readonly Html[] {
  return Object.entries(fields).flatMap(([key, entry]) => {
    const value = values[key] as Stated<unknown> | undefined;
    return value === undefined
      ? []
      : [html`<dt>${words(key)}</dt><dd>${withSource(value, fieldOf(entry), of, words(key), setting)}</dd>`];
  });
}
