import { bareNumber, measured, said } from '../../finding/measure.ts';
import { valueIfStated } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import type { BeltDriveSheet } from '../belt-drive.ts';
import { usualBeltSlip } from '../belt-frequencies.ts';
import type { RoleSpeeds } from '../element.ts';
import { beltTrain } from './example-trains.ts';
import { ratioMismatch } from './ratio-against-teeth.ts';
import { machineRule } from './rule.ts';

export const beltRatioAgainstDiameters = machineRule<[BeltDriveSheet, RoleSpeeds<'from' | 'to'>]>({
  id: 'machine/belt-ratio-against-diameters',
  title: 'A stated belt ratio agrees with the pulley diameters',
  prose:
    'D_2/D_1, raised by the slip, is the ratio of the speeds. A larger difference is often an outside diameter taken for the pitch diameter.',
  sources: [clause(tradePractice, 'ratio mismatch above 0.5 %: stop and ask')],
  finds(sheet) {
    const driving = valueIfStated(sheet.values.drivingDiameter);
    const driven = valueIfStated(sheet.values.drivenDiameter);
    const ratio = valueIfStated(sheet.values.ratio);
    if (driving === undefined || driven === undefined || ratio === undefined || !(driving > 0)) return [];
    const slip = valueIfStated(sheet.values.slip) ?? usualBeltSlip;
    const low = (driven / driving / (1 - slip.low)) * (1 - ratioMismatch);
    const high = (driven / driving / (1 - slip.high)) * (1 + ratioMismatch);
    if (ratio >= low && ratio <= high) return [];
    return [
      {
        weight: 'question',
        at: sheet.of,
        found: said`a stated ratio of ${bareNumber(ratio)} beside diameters that give ${bareNumber(driven / driving)} without slip`,
        limit: said`${bareNumber(low)}..${bareNumber(high)} with a slip of ${measured('fraction', slip.low, 3)} to ${measured('fraction', slip.high, 3)}`,
        because: 'Every speed behind this belt follows from the pitch diameters.',
        remedy: ['measure both speeds with a stroboscope or tachometer', 'take pitch, not outside diameters'],
        asks: 'Which is right, the diameters or the ratio?',
      },
    ];
  },
  valid: beltTrain({ ratio: 1.985 }),
  invalid: beltTrain({ ratio: 2.1 }),
});
