import { type Fields, fieldOf, isOptional, kebab } from '@soundpost/core';
import { type Line, plainLines } from '../layout/line.ts';
import { type Column, table } from '../layout/table.ts';

const columns: readonly Column[] = [{ head: 'field' }, { head: 'what it is' }, { head: 'example' }];

/** The fields of a sheet as they are typed in a file, each with an example. */
export function fieldLines(fields: Fields, width: number): readonly Line[] {
  const rows = Object.entries(fields).map(([name, entry]) => {
    const field = fieldOf(entry);
    return [kebab(name), `${field.meaning}${isOptional(entry) ? ' (may be left out)' : ''}`, field.example];
  });
  return plainLines(table(columns, rows, width));
}

export function fieldsJson(fields: Fields): unknown {
  return Object.fromEntries(
    Object.entries(fields).map(([name, entry]) => {
      const { type, meaning, symbol, expected, example } = fieldOf(entry);
      return [
        kebab(name),
        {
          type,
          meaning,
          expected,
          example,
          ...(symbol === undefined ? {} : { symbol }),
          ...(isOptional(entry) ? { optional: true } : {}),
        },
      ];
    }),
  );
}
