import { expect, test } from 'vitest';
import { dateField } from './date-field.ts';
import { Refusal } from './refusal.ts';

const read = (text: unknown) => dateField('Date').read(text, { decimal: 'point' });

test('a date is read as it is written; leap days only where they are', () => {
  for (const text of ['2026-11-25', '2024-02-29', '2000-02-29']) expect(read(text)).toBe(text);
  for (const text of ['2026-02-29', '1900-02-29', '2026-04-31', '2026-13-01', '2026-00-10', '2026-01-00']) {
    expect(() => read(text), text).toThrow(Refusal);
  }
});

test('negative: a date that two countries read as two days, or that a spreadsheet made a number of', () => {
  expect(() => read('25.11.2026')).toThrow("Did you mean '2026-11-25'?");
  expect(() => read('11/12/2026')).toThrow('exchanged from country to country');
  expect(() => read('46351')).toThrow(Refusal);
  for (const raw of [null, '', 'today', 20261125, '2026-11-25T10:00', {}]) expect(() => read(raw)).toThrow(Refusal);
});
