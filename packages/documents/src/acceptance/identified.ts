import { type Identified, showMeasure, showQuantity, showSpan } from '@soundpost/core';
import { type Html, named } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';
import { type JudgingWord, sign } from '../typesetting/verdict-shape.ts';

const wordOf: Readonly<Record<Identified['standing'], JudgingWord>> = {
  'as designed': 'meets',
  off: 'fails',
  'cannot tell': 'cannot tell',
};

/** Each property of an installed chain that the records tell, with its interval and the part that it speaks of. */
export function identifiedTable(identified: readonly Identified[], { showing }: Setting): Html {
  const span = (each: Identified, { low, high }: Identified['interval']) =>
    showSpan(each.quantity, { low, high } as never, showing);
  return table({
    caption: 'Properties with the interval that holds the true value with 95 %',
    columns: [
      {
        head: 'Property',
        cell: ({ title, of }: Identified) => (of === undefined ? title : `${title}, ${of}`),
      },
      { head: 'Part', cell: ({ part }) => named(part) },
      { head: 'Found', kind: 'line', cell: ({ quantity, value }) => showQuantity(quantity, value, showing) },
      { head: '95 %', kind: 'line', cell: (each) => span(each, each.interval) },
      {
        head: 'Predicted',
        kind: 'line',
        cell: ({ quantity, predicted }) => showQuantity(quantity, predicted, showing),
      },
      { head: 'Allowed', cell: (each) => `${span(each, each.allowed)}: ${showMeasure(each.tolerance, showing)}` },
      { head: 'Standing', kind: 'line', cell: ({ standing }) => sign(wordOf[standing]) },
    ],
    rows: identified,
    folds: true,
  });
}
