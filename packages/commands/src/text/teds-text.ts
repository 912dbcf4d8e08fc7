import { type Showing, showNumber, type Teds, type Told } from '@soundpost/core';
import { blank, heading, type Line, labelled, paragraph, plainLines } from '../layout/line.ts';
import { table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';

/** Whose layout it was, in words. */
export interface LayoutSaid {
  readonly origin: string;
  readonly edition: string;
}

const columns = [
  { head: 'field' },
  { head: 'value' },
  { head: 'code', align: 'right' },
  { head: 'bits', align: 'right' },
] as const;

/** Six figures: the finest coding of a standard template has steps of three parts in ten thousand. */
const figures = 6;

function valueText({ value, unit }: Told, showing: Showing): string {
  if (value === undefined) return 'not stated';
  if (typeof value === 'string') return value;
  const number = Number.isInteger(value) ? String(value) : showNumber(value, figures, showing.decimal);
  return unit === undefined ? number : `${number} ${unit}`;
}

/** A data sheet field by field, and what of it is not known. */
export function tedsLines(teds: Teds, layout: LayoutSaid, { showing, width }: Manner): readonly Line[] {
  const { told, template, notKnown, bitsLeft } = teds;
  const rows = told.map((each) => [
    each.name,
    valueText(each, showing),
    String(each.code),
    `${each.from}..${each.from + each.bits - 1}`,
  ]);
  const of = template === undefined ? 'without a template' : `template ${template.id}: ${template.name}`;
  return [
    ...heading(`Data sheet in memory, ${of}`, width),
    ...labelled('Layout', `${layout.origin}: ${layout.edition}`, width, '  ', 12),
    blank,
    ...plainLines(table(columns, rows, width, '  ')),
    blank,
    ...(notKnown.length === 0 ? [] : labelled('Not known', notKnown.join('; '), width, '  ', 12)),
    ...labelled('Bits left', `${bitsLeft} behind the last field, not read`, width, '  ', 12),
    ...paragraph(
      '  What a memory says is what somebody wrote there; it is no calibration unless a date stands beside it.',
      width,
      '  ',
    ),
  ];
}
