import { answerOf, fromAll, numberField, optional, type Sheet, spanField, valueIfStated } from '../quantity/index.ts';
import { singleDegreeOfFreedom } from '../source/single-degree-of-freedom.ts';
import { clause } from '../source/source.ts';
import { couplesNothing, machineElementKind } from './element.ts';
import { resonanceLine } from './standing-band.ts';

const sources = [clause(singleDegreeOfFreedom, 'half-power width')];

export const criticalSpeedSheet = {
  speed: spanField('shaft speed', 'Critical speed, from low to high where it is not known better', {
    symbol: 'n_c',
    example: '4200..4500 r/min',
  }),
  quality: optional(
    numberField('Amplification at it, half-power method; left out: no width is added', { symbol: 'Q', example: '6' }),
  ),
} as const;
export type CriticalSpeedSheet = Sheet<typeof criticalSpeedSheet>;

/** A speed at which a shaft bends or rocks in its bearings most: its once-per-turn order meets it there. */
export const criticalSpeed = machineElementKind({
  kind: 'critical-speed',
  name: 'Critical speed',
  sheet: criticalSpeedSheet,
  places: ['on'],
  relations: () => couplesNothing,
  lines: (sheet, place) => {
    const quality = valueIfStated(sheet.values.quality);
    const span = answerOf(sheet.values.speed, sheet.of, 'speed');
    return [
      resonanceLine(
        sheet.of,
        fromAll({ span }, (known) => ({ ...known.span, ...(quality === undefined ? {} : { quality }) })),
        {
          name: 'critical',
          meaning: `Critical speed of ${place.shafts.on}, as a frequency; half-speed whirl and orders may meet it too`,
          sources,
        },
      ),
    ];
  },
  doubts: () => [],
  sources,
});
