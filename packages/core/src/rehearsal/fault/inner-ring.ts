import { mcFaddenSmith1984 } from '../../source/mcfadden-smith-1984.ts';
import { clause } from '../../source/source.ts';
import { blows, turnsUnderLoad } from './bearing-blows.ts';
import { faultKind } from './fault-kind.ts';

/** The spot turns with the shaft through the loaded part of the bearing: the blows come and go once per turn. */
export const innerRing = faultKind({
  kind: 'inner-ring',
  name: 'Spall on the inner ring',
  at: ['rolling-bearing'],
  sized: 'peak of one blow under the load, at the measuring point, as acceleration',
  example: '1 g peak',
  sources: [clause(mcFaddenSmith1984)],
  parts: (fault, place) => blows(fault, place, 'inner-ring', turnsUnderLoad(place, 'inner')),
});
