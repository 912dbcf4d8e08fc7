import { answer } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { blows } from './bearing-blows.ts';
import { faultKind } from './fault-kind.ts';

/** A broken cage knocks once in each of its turns, unevenly. */
export const cage = faultKind({
  kind: 'cage',
  name: 'Broken or worn cage',
  at: ['rolling-bearing'],
  sized: 'peak of one knock at the measuring point, as acceleration',
  example: '0.5 g peak',
  sources: [clause(tradePractice, 'cage, once in each of its turns')],
  parts: (fault, place) => blows(fault, place, 'cage', answer(undefined), { slip: 0.02, scatter: 0.4 }),
});
