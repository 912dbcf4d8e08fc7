import { measured, said } from '../../finding/measure.ts';
import { valueIfStated } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import type { BeltDriveSheet } from '../belt-drive.ts';
import { shortestBelt } from '../belt-frequencies.ts';
import type { RoleSpeeds } from '../element.ts';
import { beltTrain } from './example-trains.ts';
import { machineRule } from './rule.ts';

export const beltLengthPossible = machineRule<[BeltDriveSheet, RoleSpeeds<'from' | 'to'>]>({
  id: 'machine/belt-length-possible',
  title: 'The belt is long enough to go round both pulleys',
  prose:
    'Round two pulleys that just touch, a belt needs half of each rim and twice their distance: (π/2 + 1)·(D_1 + D_2). A shorter one is a centre distance, or an inside length in the wrong unit.',
  sources: [clause(tradePractice, 'geometry of an open belt')],
  finds(sheet) {
    const driving = valueIfStated(sheet.values.drivingDiameter);
    const driven = valueIfStated(sheet.values.drivenDiameter);
    const length = valueIfStated(sheet.values.beltLength);
    if (driving === undefined || driven === undefined || length === undefined) return [];
    const shortest = shortestBelt(driving, driven);
    if (length >= shortest) return [];
    return [
      {
        weight: 'question',
        at: sheet.of,
        found: said`a belt of ${measured('length', length)} round pulleys of ${measured('length', driving)} and ${measured('length', driven)}`,
        limit: said`at least ${measured('length', shortest)}`,
        because: 'The belt-pass line follows from the length.',
        remedy: ['read the length printed on the belt', 'measure the centre distance and compute it'],
        asks: 'Is this the centre distance, or another unit?',
      },
    ];
  },
  valid: beltTrain({}),
  invalid: beltTrain({ 'belt-length': '790 mm' }),
});
