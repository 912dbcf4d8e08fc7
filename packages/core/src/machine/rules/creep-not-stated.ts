import { measured, said } from '../../finding/measure.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import type { RoleSpeeds } from '../element.ts';
import type { FrictionPairSheet } from '../friction-pair.ts';
import { usualCreep } from '../rim-creep.ts';
import { linkedTrain } from './example-trains.ts';
import { machineRule } from './rule.ts';

const rims = { kind: 'friction-pair', 'driving-diameter': '4.8 m', 'driven-diameter': '1.2 m' };

export const creepNotStated = machineRule<[FrictionPairSheet, RoleSpeeds<'from' | 'to'>]>({
  id: 'machine/creep-not-stated',
  title: 'Rims whose creep nobody stated carry a band',
  prose:
    'Where the creep of one rim on another is not stated, every line behind it is given without creep and with a band below. Orders that would fall together by the diameters beat with each other at the rate of the creep, too slowly for any spectrum: a phase reference on each shaft tells them apart.',
  sources: [clause(tradePractice, 'creep of rims 0 to 1 %')],
  finds(sheet) {
    if (sheet.values.creep !== undefined) return [];
    return [
      {
        weight: 'warns',
        at: sheet.of,
        found: 'the creep between the rims is not stated',
        limit: '',
        because: said`Speeds behind it are computed without creep and may lie up to ${measured('fraction', usualCreep.high, 3)} lower.`,
        remedy: ['count the turns of both over an hour', 'put a phase reference on each of the two shafts'],
        asks: 'How many turns do both make in the same hour?',
      },
    ];
  },
  valid: linkedTrain({ ...rims, creep: '0..0.1 %' }),
  invalid: linkedTrain(rims),
});
