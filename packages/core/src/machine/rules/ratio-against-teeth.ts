import { bareNumber, measuredChange, said } from '../../finding/measure.ts';
import { valueIfStated } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import type { RoleSpeeds } from '../element.ts';
import type { GearPairSheet } from '../gear-pair.ts';
import { gearTrain } from './example-trains.ts';
import { machineRule } from './rule.ts';

/** Mismatch of a stated ratio above which somebody is asked. Common practice, no source. */
export const ratioMismatch = 0.005;

export const ratioAgainstTeeth = machineRule<[GearPairSheet, RoleSpeeds<'from' | 'to'>]>({
  id: 'machine/ratio-against-teeth',
  title: 'A stated gear ratio agrees with the tooth counts',
  prose:
    'A ratio on a plate is rounded, by less than half a per cent. A larger difference is a wrong tooth count, or counts of another stage.',
  sources: [clause(tradePractice, 'ratio mismatch above 0.5 %: stop and ask')],
  finds(sheet) {
    const z1 = valueIfStated(sheet.values.drivingTeeth);
    const z2 = valueIfStated(sheet.values.drivenTeeth);
    const ratio = valueIfStated(sheet.values.ratio);
    if (z1 === undefined || z2 === undefined || ratio === undefined) return [];
    const fromTeeth = z2 / z1;
    const mismatch = fromTeeth / ratio - 1;
    if (Math.abs(mismatch) <= ratioMismatch) return [];
    const exchanged = Math.abs(fromTeeth * ratio - 1) <= ratioMismatch;
    return [
      {
        weight: 'question',
        at: sheet.of,
        found: said`${z2}/${z1} = ${bareNumber(fromTeeth, 5)} beside a stated ratio of ${bareNumber(ratio, 5)}`,
        limit: said`a difference of up to ${ratioMismatch * 100} %, found ${measuredChange(mismatch)}`,
        because: 'Every speed behind this gear follows from the tooth counts.',
        remedy: exchanged
          ? ['exchange the two tooth counts: the stated ratio is the other way up']
          : ['count the teeth', 'read the ratio from the plate again'],
        asks: exchanged ? 'Are driving and driven wheel exchanged?' : 'Which is right, the tooth counts or the ratio?',
      },
    ];
  },
  valid: gearTrain({ ratio: 3.36 }),
  invalid: gearTrain({ ratio: 3.42 }),
});
