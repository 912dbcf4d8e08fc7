import { choiceField, optional, quantityField, type Sheet, spanField, valueIfStated } from '../quantity/index.ts';
import { clause } from '../source/source.ts';
import { tradePractice } from '../source/trade-practice.ts';
import { machineElementKind, present } from './element.ts';
import { usualCreep } from './rim-creep.ts';
import { fallingBehind, rimRelations, rimsOf } from './rim-drive.ts';
import { creepNotStated } from './rules/creep-not-stated.ts';

const sources = [clause(tradePractice, 'rolling contact: rim speeds alike but for creep')];

export const frictionPairSheet = {
  drivingDiameter: quantityField('length', 'Diameter of the driving rim, on the shaft `from`', {
    symbol: 'D_1',
    example: '4.8 m',
  }),
  drivenDiameter: quantityField('length', 'Diameter of the driven rim, on the shaft `to`', {
    symbol: 'D_2',
    example: '1.2 m',
  }),
  contact: optional(choiceField(['outside', 'inside'], 'Whether the rims touch from outside; outside where left out')),
  creep: optional(spanField('fraction', 'Creep: how far the driven rim falls behind', { example: '0..0.2 %' })),
} as const;
export type FrictionPairSheet = Sheet<typeof frictionPairSheet>;

/**
 * Two rims that roll on each other: tyre on roller, drum on drive wheel, backing roll on work roll.
 * D_1·n_1·(1 − c) = D_2·n_2; the exact ratio is that of no creep, or of the middle of a stated creep.
 */
export const frictionPair = machineElementKind({
  kind: 'friction-pair',
  name: 'Rims rolling on each other',
  sheet: frictionPairSheet,
  places: ['from', 'to'],
  relations: (sheet) =>
    rimRelations(
      'two rims roll on each other',
      rimsOf(sheet, 'rim'),
      fallingBehind(present(sheet, 'creep'), sheet.of, 'creep', usualCreep),
      valueIfStated(sheet.values.contact) === 'inside' ? 'the same way' : 'opposite ways',
    ),
  lines: () => [],
  doubts: (sheet, speeds) => creepNotStated.check(sheet, speeds),
  sources,
});
