import {
  type Answer,
  answer,
  answerOf,
  ask,
  choiceField,
  exactly,
  type Fraction,
  fraction,
  fromAll,
  minus,
  multiplied,
  optional,
  plus,
  quantityField,
  type Sheet,
  spanField,
  thenAnswer,
  unanswered,
  valueIfStated,
} from '../quantity/index.ts';
import { clause } from '../source/source.ts';
import { tradePractice } from '../source/trade-practice.ts';
import { machineElementKind, present } from './element.ts';
import { equation, type RelationTerm } from './relation.ts';
import { usualCreep } from './rim-creep.ts';
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
    fromAll({ rims: rimsOf(sheet), creep: creepOf(sheet) }, ({ rims, creep }) => {
      const sense = valueIfStated(sheet.values.contact) === 'inside' ? -1 : 1;
      const at = (share: Fraction): readonly RelationTerm<'from' | 'to'>[] =>
        equation(
          ['from', multiplied(exactly(rims.driving), minus(fraction(1), share))],
          ['to', multiplied(fraction(sense), exactly(rims.driven))],
        );
      return [
        {
          words: 'two rims roll on each other',
          terms: at(creep.nominal),
          loosely: { low: at(exactly(creep.high)), high: at(exactly(creep.low)) },
        },
      ];
    }),
  lines: () => [],
  doubts: (sheet, speeds) => creepNotStated.check(sheet, speeds),
  sources,
});

interface Rims {
  readonly driving: number;
  readonly driven: number;
}

function rimsOf(sheet: FrictionPairSheet): Answer<Rims> {
  return thenAnswer(
    ask(sheet, ['drivingDiameter', 'drivenDiameter'], ({ drivingDiameter: driving, drivenDiameter: driven }) => ({
      driving,
      driven,
    })),
    (rims) =>
      rims.driving > 0 && rims.driven > 0
        ? answer(rims)
        : unanswered([{ of: sheet.of, what: 'rim diameters above zero' }]),
  );
}

interface Creep {
  readonly nominal: Fraction;
  readonly low: number;
  readonly high: number;
}

function creepOf(sheet: FrictionPairSheet): Answer<Creep> {
  const own = present(sheet, 'creep');
  if (own === undefined) return answer({ nominal: fraction(0), ...usualCreep });
  return thenAnswer(answerOf(own, sheet.of, 'creep'), ({ low, high }) => {
    const middle = multiplied(fraction(1, 2), plus(exactly(low), exactly(high)));
    return low > -1 && high < 1
      ? answer({ nominal: middle, low, high })
      : unanswered([{ of: sheet.of, what: 'a creep below 100 %' }]);
  });
}
