import { type DesignedPoint, type EarthPlaces, earthPlaces, type Showing, showQuantity } from '@soundpost/core';
import { earthWords, loopDrawing } from '../../wiring/loop-drawing.ts';
import { drawn, facts, note } from '../blocks.ts';
import { answerText } from '../cells.ts';
import { checkpointTable } from '../checkpoints.ts';
import { everyPoint } from '../every-point.ts';
import { issuedKind } from '../issued-kind.ts';
import { madeSheet } from '../made-sheet.ts';
import type { Block } from '../record.ts';
import { terminalTable } from '../terminals.ts';

/** One page for each loop: from the transducer to the input, with its terminals, its values and its one earth. */
export const loopDiagrams = issuedKind({
  kind: 'loop-diagrams',
  title: 'Loop diagrams',
  readers: 'whoever terminates, checks and later repairs a loop: all of it on one page',
  orientation: 'landscape',
  sheets: (design, showing) =>
    everyPoint(design).flatMap(({ designed }) =>
      designed.appraisal === undefined
        ? []
        : [madeSheet(`Loop ${designed.point.of}`, [designed], (each) => loopBlocks(each, showing))],
    ),
});

function loopBlocks(designed: DesignedPoint, showing: Showing): readonly Block[] {
  const places = placesOf(designed);
  const loop = designed.appraisal?.prediction.loop;
  return [
    ...drawn(designed.point.of, loopDrawing(designed, places, showing), captionOf(designed)),
    facts([
      ['earth', earthWords(places, designed.stated.wiring !== undefined)],
      ['hazardous area', designed.area === undefined ? undefined : `${designed.area.name}: ${designed.area.wording}`],
      [
        'resistance in the loop',
        loop && answerText(loop.resistance, (value) => showQuantity('resistance', value, showing)),
      ],
      [
        'allowed at most',
        loop && answerText(loop.largestResistance, (value) => showQuantity('resistance', value, showing)),
      ],
    ]),
    ...checkpointTable(designed, showing),
    terminalTable(designed, showing),
    ...(designed.area === undefined ? [] : [note(designed.area.caution)]),
  ];
}

function placesOf({ point, stated: { wiring }, appraisal }: DesignedPoint): EarthPlaces {
  return earthPlaces({ point, chain: appraisal!.prediction.chain, ...(wiring === undefined ? {} : { wiring }) });
}

function captionOf({ area, stated }: DesignedPoint): string {
  const screen = stated.wiring === undefined ? ' Of the screen nothing is stated.' : '';
  const edge = area === undefined ? '' : ' The chain line is the edge of the hazardous area.';
  return `Full lines are cores, the dashed line is the screen; a small circle is a terminal.${screen}${edge}`;
}
