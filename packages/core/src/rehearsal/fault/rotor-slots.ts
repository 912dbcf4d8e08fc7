import { inductionMotorPractice } from '../../source/induction-motor-practice.ts';
import { clause } from '../../source/source.ts';
import { faultKind } from './fault-kind.ts';
import { tones } from './shared-parts.ts';

/** Rotor-bar pass with side lines twice line frequency away. */
export const rotorSlots = faultKind({
  kind: 'rotor-slots',
  name: 'Rotor-bar pass',
  at: ['induction-motor'],
  sized: 'rotor-bar pass plus twice line frequency',
  example: '0.1 g peak',
  sources: [clause(inductionMotorPractice, 'rotor-bar pass', 'from memory')],
  parts: ({ size }, place) =>
    tones(place, size, [
      { line: 'rotor-bar-pass-upper', share: 1 },
      { line: 'rotor-bar-pass-lower', share: 0.7 },
      { line: 'rotor-bar-pass', share: 0.5 },
    ]),
});
