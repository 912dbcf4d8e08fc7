import { type Answer, thenAnswer } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { type FaultPlace, faultKind } from './fault-kind.ts';
import { tones } from './shared-parts.ts';

/** The line by which a bladed wheel passes what stands, whatever its kind calls it. */
export function passing(place: FaultPlace): Answer<string> {
  return thenAnswer(place.line(passName(place)), () => ({ known: true, value: passName(place) }));
}

function passName(place: FaultPlace): string {
  return place.line('vane-pass').known ? 'vane-pass' : 'blade-pass';
}

/** Blade or vane pass and its multiples: a rotor near its casing, a worn wheel, flow off its best point. */
export const bladePass = faultKind({
  kind: 'blade-pass',
  name: 'Blade or vane pass',
  at: ['impeller', 'hydraulic-turbine'],
  sized: 'the passing line',
  example: '2 mm/s rms',
  sources: [clause(tradePractice, 'blade pass and its multiples')],
  parts: ({ size }, place) =>
    thenAnswer(passing(place), (line) =>
      tones(
        place,
        size,
        [1, 0.4, 0.2].map((share, index) => ({ line, times: index + 1, share, more: { grows: 2 } })),
      ),
    ),
});
