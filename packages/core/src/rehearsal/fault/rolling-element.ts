import { answer } from '../../quantity/index.ts';
import { mcFaddenSmith1984 } from '../../source/mcfadden-smith-1984.ts';
import { clause } from '../../source/source.ts';
import { blows } from './bearing-blows.ts';
import { faultKind } from './fault-kind.ts';

/** The spot strikes outer and inner ring in turn, the inner one farther from the housing; the cage carries it through the load. */
export const rollingElement = faultKind({
  kind: 'rolling-element',
  name: 'Spall on a rolling element',
  at: ['rolling-bearing'],
  sized: 'peak of one blow under the load, at the measuring point, as acceleration',
  example: '1 g peak',
  sources: [clause(mcFaddenSmith1984)],
  parts: (fault, place) => {
    const carried = place.line('cage');
    return blows(fault, place, 'element-spin-twice', carried.known ? carried : answer(undefined), { alternate: 0.6 });
  },
});
