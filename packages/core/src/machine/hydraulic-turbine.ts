import {
  type Answer,
  answer,
  answerOf,
  countField,
  fromAll,
  optional,
  type Sheet,
  spanField,
} from '../quantity/index.ts';
import { hydraulicTurbinePractice } from '../source/hydraulic-turbine-practice.ts';
import { clause } from '../source/source.ts';
import { commonOrder, rowMeetings } from './bladed-rows.ts';
import { couplesNothing, type ElementLine, linesFrom, machineElementKind, noSlip, present } from './element.ts';
import { counted, type FrequencyTerm, measuredTimes, turning } from './form.ts';

const sources = [clause(hydraulicTurbinePractice)];
const line = linesFrom(sources);

/** Vortex rope in the draft tube at part load, as a share of the speed, where nobody stated another. From memory. */
export const usualRope = { low: 0.2, high: 0.4 };

export const hydraulicTurbineSheet = {
  runnerBlades: countField('Blades of the runner', { symbol: 'z_b', example: '13' }),
  guideVanes: countField('Guide vanes', { symbol: 'z_g', example: '20' }),
  rope: optional(spanField('ratio', 'Vortex rope at part load, as a share of the speed', { example: '0.2..0.4' })),
} as const;
export type HydraulicTurbineSheet = Sheet<typeof hydraulicTurbineSheet>;

/** Runner of a hydraulic turbine or pump-turbine, with its guide vanes. */
export const hydraulicTurbine = machineElementKind({
  kind: 'hydraulic-turbine',
  name: 'Hydraulic turbine',
  sheet: hydraulicTurbineSheet,
  places: ['on'],
  relations: () => couplesNothing,
  lines: (sheet, place): readonly ElementLine[] => {
    const running = answerOf(sheet.values.runnerBlades, sheet.of, 'runner blades');
    const standing = answerOf(sheet.values.guideVanes, sheet.of, 'guide vanes');
    const shaft = turning(place.shafts.on);
    const times = (count: Answer<number>) => fromAll({ count }, (known) => [counted(known.count, shaft)]);
    return [
      line('blade-pass', 'Runner blades passing what stands: casing, guide vanes, head cover', 3, times(running)),
      line('guide-vane-pass', 'Guide vanes as a blade of the runner meets them', 2, times(standing)),
      line(
        'blade-guide-vane',
        'Lowest order at which blades and guide vanes repeat together',
        1,
        times(fromAll({ running, standing }, commonOrder)),
      ),
      line(
        'blade-guide-vane-field',
        'Multiple of the blade pass whose pressure field has the fewest node diameters: it reaches farthest',
        1,
        times(fromAll({ running, standing }, (rows) => rowMeetings(rows)[0]!.m * rows.running)),
      ),
      rope(
        sheet,
        line('rope', 'Vortex rope in the draft tube at part load: a band, named by its middle', 1, answer([])),
        shaft,
      ),
    ];
  },
  doubts: () => [],
  sources,
});

function rope(sheet: HydraulicTurbineSheet, line: ElementLine, shaft: FrequencyTerm['of']): ElementLine {
  const own = present(sheet, 'rope');
  const band = own === undefined ? answer(usualRope) : answerOf(own, sheet.of, 'rope');
  const middle = fromAll({ band }, (known) => (known.band.low + known.band.high) / 2);
  const wide = band.known && middle.known && middle.value > 0;
  return {
    ...line,
    form: fromAll({ middle }, (known) => [measuredTimes(known.middle, shaft)]),
    slip: wide ? { low: band.value.low / middle.value - 1, high: band.value.high / middle.value - 1 } : noSlip,
  };
}
