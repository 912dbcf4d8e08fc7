import { type Fields, fieldOf, type Sheet, type Stated, words } from '@soundpost/core';
import { type Line, labelled } from '../layout/line.ts';
import type { Manner } from '../manner.ts';
import { capital } from './values-text.ts';

/** What a sheet states, a line each with how it is known; what is not known says who is to be asked. */
export function sheetLines(sheet: Sheet, fields: Fields, { showing, width }: Manner, column: number): readonly Line[] {
  const values = sheet.values as Readonly<Record<string, Stated<unknown> | undefined>>;
  return Object.entries(fields).flatMap(([name, entry]) => {
    const value = values[name];
    if (value === undefined) return [];
    return labelled(
      capital(words(name)),
      statedText(value, (each) => fieldOf(entry).show(each, showing)),
      width,
      '    ',
      column,
    );
  });
}

/** `3 s (data sheet, manual of the rack)`, `unknown; ask the owner of the trip`. */
export function statedText<T>(stated: Stated<T>, show: (value: T) => string): string {
  if (!stated.known) return `unknown${stated.ask === undefined ? '' : `; ask ${stated.ask}`}`;
  const how = [stated.status, stated.source].filter((each) => each !== undefined).join(', ');
  return `${show(stated.value)}${how === '' ? '' : ` (${how})`}`;
}
