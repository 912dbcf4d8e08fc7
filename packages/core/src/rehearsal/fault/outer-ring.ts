import { antoniRandall2003 } from '../../source/antoni-randall-2003.ts';
import { clause } from '../../source/source.ts';
import { blows, turnsUnderLoad } from './bearing-blows.ts';
import { faultKind } from './fault-kind.ts';

/** Every element strikes the spot as it passes; a spot that stands under the load is struck alike each time. */
export const outerRing = faultKind({
  kind: 'outer-ring',
  name: 'Spall on the outer ring',
  at: ['rolling-bearing'],
  sized: 'peak of one blow at the measuring point, as acceleration',
  example: '1 g peak',
  sources: [clause(antoniRandall2003)],
  parts: (fault, place) => blows(fault, place, 'outer-ring', turnsUnderLoad(place, 'outer')),
});
