import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { faultKind } from './fault-kind.ts';
import { tones } from './shared-parts.ts';

/** Twice per turn above all, with once and three times per turn beside it. */
export const misalignment = faultKind({
  kind: 'misalignment',
  name: 'Misalignment',
  at: 'shaft',
  sized: 'twice per turn',
  example: '3 mm/s rms',
  sources: [clause(tradePractice, 'misalignment, twice per turn')],
  parts: ({ size, phase }, place) =>
    tones(place, size, [
      { line: '2x', share: 1, more: phase === undefined ? {} : { phase } },
      { line: '1x', share: 0.5 },
      { line: '1x', times: 3, share: 0.3 },
    ]),
});
