import { fromAll } from '../../quantity/index.ts';
import { inductionMotorPractice } from '../../source/induction-motor-practice.ts';
import { clause } from '../../source/source.ts';
import type { TonePart } from '../part/part.ts';
import { faultKind } from './fault-kind.ts';
import { share, tones } from './shared-parts.ts';

/** Once per turn with side lines a pole pass away. */
export const brokenBar = faultKind({
  kind: 'broken-bar',
  name: 'Broken or loose rotor bar',
  at: ['induction-motor'],
  sized: 'once per turn; each side line 0.3 of it',
  example: '1 mm/s rms',
  sources: [clause(inductionMotorPractice, 'pole pass')],
  parts: ({ size }, place) =>
    fromAll(
      {
        sides: tones(place, size, [
          { line: 'broken-bar-lower', share: 0.3 },
          { line: 'broken-bar-upper', share: 0.3 },
        ]),
        turn: place.turn('on') ?? { known: true, value: [] },
      },
      ({ sides, turn }): readonly TonePart[] => [
        { is: 'tone', name: `${place.at}, once per turn`, of: turn, level: share(size, 1) },
        ...sides,
      ],
    ),
});
