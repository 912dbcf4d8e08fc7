import { fromAll } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import type { MotionPart } from '../part/part.ts';
import { faultKind } from './fault-kind.ts';

/** A scratch or a keyway under a probe: one spike in each turn, as deep at slow roll as at speed. */
export const scratch = faultKind({
  kind: 'scratch',
  name: 'Scratch or keyway in the probe track',
  at: 'shaft',
  sized: 'its depth as a peak',
  example: '20 um peak',
  sources: [clause(tradePractice, 'one spike in each turn')],
  parts: ({ size }, place) =>
    fromAll({ of: place.line('1x') }, ({ of }): readonly MotionPart[] => [
      { is: 'mark', name: `${place.at}, scratch`, of, level: size, width: 0.004 },
    ]),
});
