import { measured, said } from '../../finding/measure.ts';
import { valueIfStated } from '../../quantity/index.ts';
import { rollingBearingKinematics } from '../../source/rolling-bearing-kinematics.ts';
import { clause } from '../../source/source.ts';
import { largestElement } from '../bearing-frequencies.ts';
import type { RollingBearingSheet } from '../bearing-geometry.ts';
import type { RoleSpeeds } from '../element.ts';
import { bearingTrain } from './example-trains.ts';
import { machineRule } from './rule.ts';

export const rowsCountedTwice = machineRule<[RollingBearingSheet, RoleSpeeds<'inner' | 'outer'>]>({
  id: 'machine/rows-counted-twice',
  title: 'The elements of a bearing of several rows are counted in one row',
  prose:
    'All rows share one set of frequencies, that of one row. A count that fits only when divided by the rows is that of all of them.',
  sources: [clause(rollingBearingKinematics, 'geometry')],
  finds(sheet) {
    const n = valueIfStated(sheet.values.elements);
    const rows = valueIfStated(sheet.values.rows);
    const d = valueIfStated(sheet.values.elementDiameter);
    const D = valueIfStated(sheet.values.pitchDiameter);
    if (n === undefined || rows === undefined || rows < 2 || d === undefined || D === undefined) return [];
    const perRow = n / rows;
    const fits = (count: number) => d <= largestElement(count, D);
    if (fits(n) || !Number.isInteger(perRow) || !fits(perRow)) return [];
    return [
      {
        weight: 'question',
        at: sheet.of,
        found: said`${n} elements of ${measured('length', d)}, ${rows} rows`,
        limit: `${perRow} in one row would fit, ${n} do not`,
        because: `All ball-pass lines would be ${rows} times too high.`,
        remedy: [`enter ${perRow} elements if ${n} is the count of all rows`],
        asks: `Is ${n} the count of all ${rows} rows?`,
      },
    ];
  },
  valid: bearingTrain({ rows: 2, elements: 19, 'element-diameter': '62 mm', 'pitch-diameter': '460 mm' }),
  invalid: bearingTrain({ rows: 2, elements: 38, 'element-diameter': '62 mm', 'pitch-diameter': '460 mm' }),
});
