import { type PointProbes, showMeasure } from '@soundpost/core';
import { blank, type Line, plainLines } from '../layout/line.ts';
import { table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';
import { answerText } from './values-text.ts';

/** What the probes of a point read: gaps, thrust positions, pulses, slow roll. */
export function probeLines(probes: PointProbes, { width, showing }: Manner): readonly Line[] {
  return probes.arrangements.flatMap(({ title, rows }, index) => [
    ...(index === 0 ? [] : [blank]),
    ...plainLines(
      table(
        [{ head: title }, { head: 'reads' }, { head: 'because' }],
        rows.map((row) => [
          row.name.replaceAll('-', ' '),
          answerText(row.value, (value) => showMeasure(value, showing)),
          showMeasure(row.because, showing),
        ]),
        width,
        '  ',
      ),
    ),
  ]);
}
