import { fromAll } from '../../quantity/index.ts';
import { reciprocatingPractice } from '../../source/reciprocating-practice.ts';
import { clause } from '../../source/source.ts';
import type { MotionPart } from '../part/part.ts';
import { faultKind } from './fault-kind.ts';

/** A worn pin or a loose crosshead knocks each time the load of the rod changes its sign. */
export const rodLoad = faultKind({
  kind: 'rod-load',
  name: 'Knock at reversal of rod load',
  at: ['reciprocating-machine'],
  sized: 'peak of one knock at the measuring point, as acceleration',
  example: '10 g peak',
  sources: [clause(reciprocatingPractice)],
  parts: ({ size }, place) =>
    fromAll({ of: place.line('rod-load-reversal') }, ({ of }): readonly MotionPart[] => [
      {
        is: 'impacts',
        name: `${place.at}/rod-load-reversal`,
        of,
        level: size,
        modes: place.modes,
        slip: 0.002,
        scatter: 0.15,
        assumed: place.modesAssumed,
      },
    ]),
});
