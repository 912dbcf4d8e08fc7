import { measured, said } from '../../finding/measure.ts';
import { valueIfStated } from '../../quantity/index.ts';
import { rollingBearingKinematics } from '../../source/rolling-bearing-kinematics.ts';
import { clause } from '../../source/source.ts';
import { largestElement } from '../bearing-frequencies.ts';
import type { RollingBearingSheet } from '../bearing-geometry.ts';
import type { RoleSpeeds } from '../element.ts';
import { bearingTrain } from './example-trains.ts';
import { machineRule } from './rule.ts';

export const elementsFitPitchCircle = machineRule<[RollingBearingSheet, RoleSpeeds<'inner' | 'outer'>]>({
  id: 'machine/elements-fit-pitch-circle',
  title: 'The elements of one row fit side by side on the pitch circle',
  prose: 'n elements of diameter d stand on a circle of diameter D only if d ≤ D·sin(π/n); nearly n·d ≤ π·D.',
  sources: [clause(rollingBearingKinematics, 'geometry')],
  finds(sheet) {
    const n = valueIfStated(sheet.values.elements);
    const d = valueIfStated(sheet.values.elementDiameter);
    const D = valueIfStated(sheet.values.pitchDiameter);
    if (n === undefined || d === undefined || D === undefined || d >= D || d <= 0) return [];
    const largest = largestElement(n, D);
    if (d <= largest) return [];
    const most = Math.floor(Math.PI / Math.asin(d / D) + 1e-9);
    return [
      {
        weight: 'question',
        at: sheet.of,
        found: said`${n} elements of ${measured('length', d)} on a pitch circle of ${measured('length', D)}`,
        limit: said`${most} of them, or elements up to ${measured('length', largest)}`,
        because: 'Every ball-pass line is a multiple of the number of elements.',
        remedy: ['count the elements of one row', 'read pitch and element diameter from the drawing'],
        asks: 'Is the number that of one row, and the pitch diameter that of the element centres?',
      },
    ];
  },
  valid: bearingTrain({}),
  invalid: bearingTrain({ elements: 27, 'element-diameter': '20 mm', 'pitch-diameter': '99 mm' }),
});
