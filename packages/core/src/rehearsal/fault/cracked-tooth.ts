import { answer, fromAll } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import type { MotionPart } from '../part/part.ts';
import { faultKind } from './fault-kind.ts';

/** One knock in each turn of the driving wheel. */
export const crackedTooth = faultKind({
  kind: 'cracked-tooth',
  name: 'Cracked or broken tooth of the driving wheel',
  at: ['gear-pair', 'worm-pair'],
  sized: 'peak of one knock at the measuring point, as acceleration',
  example: '2 g peak',
  sources: [clause(tradePractice, 'one knock in each turn of the wheel')],
  parts: ({ size }, place) =>
    fromAll({ of: place.turn('from') ?? answer([]) }, ({ of }): readonly MotionPart[] => [
      {
        is: 'impacts',
        name: `${place.at}, turn of the driving wheel`,
        of,
        level: size,
        modes: place.modes,
        slip: 0,
        scatter: 0.05,
        assumed: place.modesAssumed,
      },
    ]),
});
