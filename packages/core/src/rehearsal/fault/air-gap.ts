import { inductionMotorPractice } from '../../source/induction-motor-practice.ts';
import { clause } from '../../source/source.ts';
import { faultKind } from './fault-kind.ts';
import { tones } from './shared-parts.ts';

/** Twice line frequency: uneven air gap, loose stator iron. */
export const airGap = faultKind({
  kind: 'air-gap',
  name: 'Uneven air gap or loose stator iron',
  at: ['induction-motor', 'synchronous-motor'],
  sized: 'twice line frequency',
  example: '1 mm/s rms',
  sources: [clause(inductionMotorPractice, 'twice line frequency')],
  parts: ({ size }, place) =>
    tones(place, size, [
      { line: 'twice-line', share: 1 },
      { line: 'twice-line', times: 2, share: 0.2 },
    ]),
});
