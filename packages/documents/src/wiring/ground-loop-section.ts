import { type Design, type GroundLoop, type LoopHum, loopHum, showLoop, wiredPoints } from '@soundpost/core';
import { levelAnswered, quantityAnswered } from '../typesetting/answers.ts';
import { type Html, html, joined, named } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';

/** Every ground loop the chains of the plant close, and where each is opened. */
export function groundLoopSection({ loops, machines }: Design, setting: Setting): Html {
  const stated = machines.some((machine) => machine.points.some((point) => point.stated.wiring !== undefined));
  if (!stated) {
    return html`<p>Nothing is stated of screens and earths, so no ground loop could be looked for.</p>`;
  }
  const loopTable = table({
    caption: 'Independent ground loops: opened one at a time, as many openings as loops end them all',
    columns: [
      {
        head: 'Loop',
        kind: 'number',
        cell: (each: GroundLoop) => String(loops.indexOf(each) + 1),
      },
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
  const hum = humRows({ loops, machines });
  return html`${loopTable}${hum.length === 0 ? undefined : humTable(hum, setting)}`;
}

type HumRow = LoopHum & { readonly loop: number };

function humRows({ loops, machines }: Pick<Design, 'loops' | 'machines'>): readonly HumRow[] {
  const points = machines.flatMap(wiredPoints);
  return loops.flatMap((loop, index) => loopHum(loop, points).map((each) => ({ ...each, loop: index + 1 })));
}

/** The most each loop through a signal can add, as a reading. */
function humTable(rows: readonly HumRow[], setting: Setting): Html {
  return table({
    caption:
      'Predicted hum, read as velocity at the frequency of the mains: the most a loop can add, all of its voltage',
    columns: [
      { head: 'Loop', kind: 'number', cell: ({ loop }: HumRow) => String(loop) },
      { head: 'Read at', cell: ({ point }) => named(point) },
      {
        head: 'Each millivolt rms',
        kind: 'measure',
        cell: ({ perMillivolt }) => levelAnswered(perMillivolt, setting),
      },
      {
        head: 'All of the voltage stated between the earths',
        kind: 'measure',
        cell: ({ stated }) => levelAnswered(stated, setting),
      },
    ],
    rows,
    folds: true,
  });
}
