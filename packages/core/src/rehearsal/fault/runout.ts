import { api670 } from '../../source/api-670.ts';
import { clause } from '../../source/source.ts';
import { faultKind } from './fault-kind.ts';
import { tones } from './shared-parts.ts';

/** What a probe reads of a shaft that is not round or not of one steel: the same at every speed, so slow roll shows it. */
export const runout = faultKind({
  kind: 'runout',
  name: 'Run-out of the probe track',
  at: 'shaft',
  sized: 'once per turn, at every speed',
  example: '6 um pp',
  sources: [clause(api670, 'run-out')],
  parts: ({ size, phase }, place) =>
    tones(place, size, [
      { line: '1x', share: 1, more: phase === undefined ? {} : { phase } },
      { line: '2x', share: 0.3 },
      { line: '1x', times: 3, share: 0.15 },
    ]),
});
