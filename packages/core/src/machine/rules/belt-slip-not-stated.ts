import { measured, said } from '../../finding/measure.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import type { BeltDriveSheet } from '../belt-drive.ts';
import { usualBeltSlip } from '../belt-frequencies.ts';
import type { RoleSpeeds } from '../element.ts';
import { beltTrain } from './example-trains.ts';
import { machineRule } from './rule.ts';

const { slip: _stated, ...withoutSlip } = beltTrain({}).elements.link!;

export const beltSlipNotStated = machineRule<[BeltDriveSheet, RoleSpeeds<'from' | 'to'>]>({
  id: 'machine/belt-slip-not-stated',
  title: 'A belt whose slip nobody stated carries a band',
  prose:
    'Where the slip of a belt is not stated, every line behind it is given for no slip with a band of 0 to 2 % below.',
  sources: [clause(tradePractice, 'slip of friction belts 0 to 2 %')],
  finds(sheet) {
    if (sheet.values.slip !== undefined) return [];
    return [
      {
        weight: 'warns',
        at: sheet.of,
        found: 'the slip of the belt is not stated',
        limit: '',
        because: said`Speeds behind it are computed without slip and may lie up to ${measured('fraction', usualBeltSlip.high, 3)} lower.`,
        remedy: ['measure both shaft speeds under load'],
        asks: 'How fast do both shafts turn at the same time?',
      },
    ];
  },
  valid: beltTrain({}),
  invalid: { ...beltTrain({}), elements: { link: { ...withoutSlip, kind: 'belt-drive' } } },
});
