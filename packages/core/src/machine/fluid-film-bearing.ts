import { answer, answerOf, fromAll, optional, spanField } from '../quantity/index.ts';
import { fluidFilmPractice } from '../source/fluid-film-practice.ts';
import { clause } from '../source/source.ts';
import { couplesNothing, type ElementLine, machineElementKind, noSlip, present } from './element.ts';
import { measuredTimes, turning } from './form.ts';

const sources = [clause(fluidFilmPractice)];

/** Share of shaft speed at which oil whirl is looked for where nobody stated another. Source: trade notes (second-hand). */
export const usualWhirl = { low: 0.4, high: 0.48 };

export const fluidFilmBearingSheet = {
  whirl: optional(
    spanField('ratio', 'Share of shaft speed at which oil whirl is looked for', { example: '0.40..0.48' }),
  ),
} as const;

/** Plain or tilting-pad journal bearing. */
export const fluidFilmBearing = machineElementKind({
  kind: 'fluid-film-bearing',
  name: 'Fluid-film bearing, plain or tilting-pad',
  sheet: fluidFilmBearingSheet,
  places: ['on'],
  relations: () => couplesNothing,
  lines: (sheet, place): readonly ElementLine[] => {
    const own = present(sheet, 'whirl');
    const band = own === undefined ? answer(usualWhirl) : answerOf(own, sheet.of, 'whirl');
    const middle = fromAll({ band }, (known) => (known.band.low + known.band.high) / 2);
    const slip =
      middle.known && band.known && middle.value > 0
        ? { low: band.value.low / middle.value - 1, high: band.value.high / middle.value - 1 }
        : noSlip;
    return [
      {
        name: 'whirl',
        meaning: 'Oil whirl: a band of shaft speed, named by its middle',
        form: fromAll({ middle }, (known) => [measuredTimes(known.middle, turning(place.shafts.on))]),
        slip,
        sources,
      },
    ];
  },
  doubts: () => [],
  sources,
});
