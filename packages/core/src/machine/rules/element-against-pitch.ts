import { measured, said } from '../../finding/measure.ts';
import { valueIfStated } from '../../quantity/index.ts';
import { rollingBearingKinematics } from '../../source/rolling-bearing-kinematics.ts';
import { clause } from '../../source/source.ts';
import type { RollingBearingSheet } from '../bearing-geometry.ts';
import type { RoleSpeeds } from '../element.ts';
import { bearingTrain } from './example-trains.ts';
import { machineRule } from './rule.ts';

export const elementAgainstPitch = machineRule<[RollingBearingSheet, RoleSpeeds<'inner' | 'outer'>]>({
  id: 'machine/element-against-pitch',
  title: 'A rolling element is smaller than the pitch circle',
  prose:
    'The pitch circle runs through the centres of the elements, so the element diameter lies above zero and below it.',
  sources: [clause(rollingBearingKinematics, 'geometry')],
  finds(sheet) {
    const d = valueIfStated(sheet.values.elementDiameter);
    const D = valueIfStated(sheet.values.pitchDiameter);
    if (d === undefined || D === undefined || (d > 0 && d < D)) return [];
    return [
      {
        weight: 'blocks-issue',
        at: sheet.of,
        found: said`element diameter ${measured('length', d)}, pitch diameter ${measured('length', D)}`,
        limit: 'an element diameter above zero and below the pitch diameter',
        because: 'No such bearing can turn, and none of its frequencies exists.',
        remedy: ['exchange the two if they were typed in the wrong places', 'check the units'],
        asks: 'Are the two diameters exchanged?',
      },
    ];
  },
  valid: bearingTrain({}),
  invalid: bearingTrain({ 'element-diameter': '39.04 mm', 'pitch-diameter': '7.94 mm' }),
});
