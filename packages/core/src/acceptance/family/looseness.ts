import { measuredLevel, said } from '../../finding/measure.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { multiplesSeen } from '../running-record.ts';
import { type FamilyJudged, familyKind } from './family-kind.ts';

const multiples = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10] as const;
const halves = [0.5, 1.5, 2.5, 3.5, 4.5] as const;
const fewest = { multiples: 6, halves: 2 } as const;

/** Many multiples with halves between them, one of them above the limit. */
export const loosenessFamily = familyKind({
  kind: 'looseness',
  name: 'Looseness',
  sources: [clause(tradePractice, 'multiples and halves of once per turn')],
  judge: ({ running, level, boundaries }): readonly FamilyJudged[] => {
    if (running.slow.density.resolution > 0.1 * running.speed) return [];
    const whole = multiplesSeen(running, running.speed, multiples);
    const half = multiplesSeen(running, running.speed, halves);
    if (whole.length < fewest.multiples || half.length < fewest.halves) return [];
    const levels = [...whole, ...half].flatMap(({ line }) => {
      const found = level(line);
      return found.known ? [found.value] : [];
    });
    const together = Math.hypot(...levels.map(({ value }) => value));
    const shown = said`${whole.length} multiples and ${half.length} halves of once per turn`;
    if (!boundaries.known || levels.length === 0 || together <= boundaries.value.bc.value) {
      return [
        {
          open: {
            because: said`${shown}, below the limit of the point or without one`,
            needs: 'a second point of the machine with the same pattern, and a tap test of the mount',
          },
        },
      ];
    }
    return [
      {
        named: {
          cause: 'looseness of the machine or of a bearing in its seat',
          evidence: [shown, said`together ${measuredLevel({ ...levels[0]!, value: together })}`],
          next: 'Check torque of feet and caps; compare the phase on both sides of each joint.',
          rivals: [
            { cause: 'the mount of the transducer rattles', next: 'Tap beside it, and look at its resonance.' },
            { cause: 'a rub', next: 'Watch whether halves come and go with load and temperature.' },
          ],
        },
      },
    ];
  },
});
