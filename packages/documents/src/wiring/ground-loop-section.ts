import { type Design, type GroundLoop, showLoop } from '@soundpost/core';
import { quantityAnswered } from '../typesetting/answers.ts';
import { type Html, html, joined, named } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';

/** Every ground loop the chains of the plant close, and where each is opened. */
export function groundLoopSection({ loops, machines }: Design, setting: Setting): Html {
  const stated = machines.some((machine) => machine.points.some((point) => point.stated.wiring !== undefined));
  if (!stated) {
    return html`<p>Nothing is stated of screens and earths, so no ground loop could be looked for.</p>`;
  }
  return table({
    caption: 'Independent ground loops: opened one at a time, as many openings as loops end them all',
    columns: [
      {
        head: 'Through',
        cell: (each: GroundLoop) =>
          `${each.through === 'signal' ? 'a signal' : 'screens'}${each.byDesign ? ', closed by design over a bonding conductor' : ''}`,
      },
      { head: 'Points', cell: ({ points }) => joined(points.map((each) => named(each))) },
      { head: 'Way', cell: (each) => showLoop(each) },
      {
        head: 'Resistance',
        kind: 'measure',
        cell: ({ resistance }) => quantityAnswered('resistance', resistance, setting),
      },
      { head: 'Open at', cell: ({ remedy }) => joined(remedy, '; or ') },
    ],
    rows: loops,
    folds: true,
    empty: 'The screens and earths as stated close no ground loop.',
  });
}
