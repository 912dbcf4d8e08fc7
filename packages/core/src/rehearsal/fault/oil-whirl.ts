import { fluidFilmPractice } from '../../source/fluid-film-practice.ts';
import { clause } from '../../source/source.ts';
import { faultKind } from './fault-kind.ts';
import { tones } from './shared-parts.ts';

/** The oil film carries the shaft round at somewhat less than half its speed. */
export const oilWhirl = faultKind({
  kind: 'oil-whirl',
  name: 'Oil whirl',
  at: ['fluid-film-bearing'],
  sized: 'the whirl line',
  example: '20 um pp',
  sources: [clause(fluidFilmPractice)],
  parts: ({ size, phase }, place) =>
    tones(place, size, [{ line: 'whirl', share: 1, more: phase === undefined ? {} : { phase } }]),
});
