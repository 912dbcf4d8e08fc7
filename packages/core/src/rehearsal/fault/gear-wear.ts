import { thenAnswer } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { faultKind } from './fault-kind.ts';
import { followingShaft, tones } from './shared-parts.ts';

/** Mesh and its multiples, stronger and weaker once in each turn of the driving wheel: side lines at its speed. */
export const gearWear = faultKind({
  kind: 'gear-wear',
  name: 'Worn or eccentric gear',
  at: ['gear-pair', 'worm-pair'],
  sized: 'the mesh line',
  example: '2 g peak',
  sources: [clause(tradePractice, 'mesh with side lines at the speed of the wheel')],
  parts: ({ size }, place) =>
    thenAnswer(followingShaft(place, 'from', 0.5), (modulatedBy) =>
      tones(
        place,
        size,
        [1, 0.5, 0.3].map((share, index) => ({ line: 'mesh', times: index + 1, share, more: { modulatedBy } })),
      ),
    ),
});
