import { type DesignedMachine, machinePositions, type PositionAdvice, showClause } from '@soundpost/core';
import { type Html, html } from '../typesetting/html.ts';
import { table } from '../typesetting/table.ts';

/** Where to measure on this machine, in which directions and why, each row with its source and how that is known. */
export function positionTable({ stated }: DesignedMachine): Html {
  return html`${table({
    columns: [
      { head: 'Position', cell: (each: PositionAdvice) => each.position },
      { head: 'Directions', cell: (each) => each.directions },
      { head: 'Because', cell: (each) => each.because },
      { head: 'Source, and how it is known', cell: (each) => each.sources.map(showClause).join('; ') },
    ],
    rows: machinePositions(stated.train),
    folds: true,
  })}<p class="note">Advice for machines of these elements, not a limit; no point of this design is judged by it.</p>`;
}
