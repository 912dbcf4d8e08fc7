import { type ArrangementResult, type PointProbes, type ProbeRow, showMeasure } from '@soundpost/core';
import { opened } from '../derivation/opened.ts';
import { answered } from '../typesetting/answers.ts';
import { type Html, html } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';
import { explainedProbe } from './explained-probe.ts';

/** What the probes of a point read: gaps, voltages, times, arrangement by arrangement. */
export function probeSection({ arrangements }: PointProbes, setting: Setting): Html {
  return html`${arrangements.map((arrangement: ArrangementResult) =>
    table({
      caption: arrangement.title,
      columns: [
        { head: 'What', cell: (row: ProbeRow) => row.name },
        {
          head: 'Value',
          kind: 'measure',
          cell: (row) => answered(row.value, (value) => showMeasure(value, setting.showing)),
          opened: (row, set) => opened(set, explainedProbe(arrangement, row, setting.showing), setting),
        },
        { head: 'Because', cell: (row) => showMeasure(row.because, setting.showing) },
      ],
      rows: arrangement.rows,
      folds: true,
      empty: 'No number follows from it.',
    }),
  )}`;
}
