import { type Fields, fieldOf, type Sheet, type Stated } from '@soundpost/core';
import { statedJson } from './values-json.ts';

/** What a sheet states, by the names of its fields, each with how it is known; what it does not state is left out. */
export function sheetJson(sheet: Sheet, fields: Fields): unknown {
  const values = sheet.values as Readonly<Record<string, Stated<unknown> | undefined>>;
  return Object.fromEntries(
    Object.entries(fields).flatMap(([name, entry]) => {
      const value = values[name];
      return value === undefined ? [] : [[name, statedJson(value, (each) => fieldOf(entry).json(each))]];
    }),
  );
}
