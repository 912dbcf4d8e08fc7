import { fromAll } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { faultKind } from './fault-kind.ts';
import { tones } from './shared-parts.ts';

/** Many multiples of once per turn, and halves between them: the foot lifts and falls back. */
export const looseness = faultKind({
  kind: 'looseness',
  name: 'Looseness of foot, bearing seat or bolt',
  at: 'shaft',
  sized: 'once per turn',
  example: '3 mm/s rms',
  sources: [clause(tradePractice, 'looseness: many multiples, half orders')],
  parts: ({ size }, place) =>
    fromAll(
      {
        whole: tones(
          place,
          size,
          [1, 0.8, 0.6, 0.45, 0.35, 0.3, 0.25, 0.2].map((share, index) => ({ line: '1x', times: index + 1, share })),
        ),
        half: tones(
          place,
          size,
          [1, 3, 5].map((times, index) => ({ line: 'half-order', times, share: [0.3, 0.2, 0.12][index]! })),
        ),
      },
      ({ whole, half }) => [...whole, ...half],
    ),
});
