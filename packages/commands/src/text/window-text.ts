import { showLevel, type WindowSetPoints } from '@soundpost/core';
import { type Line, paragraph, plainLines } from '../layout/line.ts';
import { table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';
import { cellText, distinctMissing, missingText } from './values-text.ts';

const names = { alertLow: 'alert below', alertHigh: 'alert above', trip: 'trip above' } as const;

/** Set points about a motion the machine works by: too little is as wrong as too much. */
export function windowLines({ window, accelerations }: WindowSetPoints, { showing, width }: Manner): readonly Line[] {
  const rows = (Object.keys(names) as (keyof typeof names)[]).map((name) => [
    names[name],
    cellText(window, (known) => showLevel(known[name], showing)),
    cellText(accelerations, (known) => showLevel(known[name], showing)),
  ]);
  const missing = [window, accelerations].flatMap((each) => (each.known ? [] : each.missing));
  const columns = [{ head: 'window of motion' }, { head: 'as motion' }, { head: 'as acceleration of that sine' }];
  return [
    ...plainLines(table(columns, rows, width, '  ')),
    ...(missing.length === 0 ? [] : paragraph(`  ? ${missingText(distinctMissing(missing))}`, width, '  ')),
  ];
}
