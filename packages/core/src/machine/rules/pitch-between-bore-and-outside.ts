import { measured, said } from '../../finding/measure.ts';
import { valueIfStated } from '../../quantity/index.ts';
import { rollingBearingKinematics } from '../../source/rolling-bearing-kinematics.ts';
import { clause } from '../../source/source.ts';
import type { RollingBearingSheet } from '../bearing-geometry.ts';
import type { RoleSpeeds } from '../element.ts';
import { bearingTrain } from './example-trains.ts';
import { machineRule } from './rule.ts';

export const pitchBetweenBoreAndOutside = machineRule<[RollingBearingSheet, RoleSpeeds<'inner' | 'outer'>]>({
  id: 'machine/pitch-between-bore-and-outside',
  title: 'The pitch circle and its elements lie between bore and outside diameter',
  prose: 'bore < D − d and D + d < outside diameter, for a bearing whose elements lie in the radial plane or near it.',
  sources: [clause(rollingBearingKinematics, 'geometry')],
  finds(sheet) {
    const { values } = sheet;
    const D = valueIfStated(values.pitchDiameter);
    const d = valueIfStated(values.elementDiameter) ?? 0;
    const bore = valueIfStated(values.bore);
    const outside = valueIfStated(values.outside);
    if (D === undefined) return [];
    const tooSmall = bore !== undefined && D - d * Math.cos(valueIfStated(values.contactAngle) ?? 0) <= bore;
    const tooLarge = outside !== undefined && D + d * Math.cos(valueIfStated(values.contactAngle) ?? 0) >= outside;
    if (!tooSmall && !tooLarge) return [];
    const edge = tooSmall
      ? said`bore ${measured('length', bore!)}`
      : said`outside diameter ${measured('length', outside!)}`;
    return [
      {
        weight: 'question',
        at: sheet.of,
        found: said`elements of ${measured('length', d)} on a pitch circle of ${measured('length', D)}`,
        limit: said`inside the ring: ${edge}`,
        because: 'A pitch diameter read from outside dimensions shifts every line of the bearing.',
        remedy: ['read the pitch diameter from the drawing, not the outside or bore diameter', 'check the units'],
        asks: 'Is the pitch diameter that of the element centres?',
      },
    ];
  },
  valid: bearingTrain({ bore: '25 mm', outside: '52 mm' }),
  invalid: bearingTrain({ bore: '25 mm', outside: '52 mm', 'pitch-diameter': '52 mm' }),
});
