import {
  checkAgainstEarlier,
  codingKinds,
  numberField,
  Refusal,
  type TranscribedField,
  type TranscribedLayout,
  transcribedEntry,
} from '@soundpost/core';
import { listOf } from './collections.ts';
import { choice, count, made, plain, type Reader, text, unread, type WithPlace, withPlace } from './reader.ts';
import { optionally, record } from './record.ts';
import { versionReader } from './version.ts';

const codings = codingKinds.map(({ kind }) => kind);
const number = (meaning: string, example: string) => optionally(plain(numberField(meaning, { example })));

/** One field, by itself in order: bits, coding and what the coding asks for fit one another. */
const field: Reader<TranscribedField> = made(
  record('a field of a TEDS layout', {
    name: text('Name of the field, as you want it shown', { example: 'sensitivity' }),
    bits: count('How many bits it has', { least: 1, example: '16' }),
    coding: choice(codings, 'How its code stands for a value'),
    start: number('Value of code 0, in the unit of the field', '5e-7'),
    step: number('From one code to the next, of constant resolution', '0.5'),
    tolerance: number('Half a step; of constant relative resolution a part of the value, such as 0.015 %', '0.015 %'),
    words: optionally(listOf(text('What a code stands for'), 'what the codes from 0 stand for', { least: 1 })),
    unit: optionally(text('Unit of start and step, as it stands in your copy', { example: 'V/Pa' })),
    onlyWhere: optionally(
      record('the selector of a field', {
        field: text('An earlier field'),
        code: count('The code it has where this field stands there', { least: 0, example: '1' }),
      }),
    ),
  }),
  (each) => {
    transcribedEntry(each);
    return each;
  },
);

const notAStandard = 'a template number from 25 to 42: standard templates are 25 to 39, calibration templates 40 to 42';

/**
 * A layout that its user copied down from a licensed edition: the fields behind the template number, in their order.
 * What a field has wrong with an earlier one is said at that field.
 */
export const tedsLayoutReader: Reader<TranscribedLayout> = made(
  record('a TEDS layout file', {
    soundpost: choice(['teds-layout'], 'What the file is'),
    version: versionReader(1),
    title: text('What the template is for'),
    edition: text('What it was copied from: standard, edition, clause or table'),
    template: made(count('Number of the template', { least: 0, example: '27' }), (id, placed, refuse) =>
      id >= 25 && id <= 42 ? id : refuse(placed, { read: String(id), expected: notAStandard }),
    ),
    fields: listOf(withPlace(field), 'the fields behind the template number, in order', { least: 1, most: 200 }),
  }),
  ({ title, edition, template, fields }, _placed, refuse) => {
    const known = fields.map(({ value }) => value);
    const clash = (each: WithPlace<TranscribedField>, index: number): boolean => {
      try {
        checkAgainstEarlier(each.value, known.slice(0, index));
        return false;
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
        refuse(each.at, error.reason);
        return true;
      }
    };
    const clashes = fields.filter(clash);
    return clashes.length > 0 ? unread : { title, edition, templateId: template, fields: known };
  },
);
