import { measured, said } from '../../finding/measure.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { seenAt } from '../lines-seen.ts';
import { type FamilyJudged, familyKind } from './family-kind.ts';

/** Side lines of once per turn from this share of it on: −40 dB. */
const speaks = 0.01;
/** Lines of the spectrum between the side line and what it stands beside. */
const clear = 4;

/** Side lines at pole pass on both sides of once per turn, and of its multiple. */
export const brokenBarFamily = familyKind({
  kind: 'broken-bar',
  name: 'Broken rotor bar',
  sources: [clause(tradePractice, 'side lines at pole pass on both sides of 1x and its multiples')],
  judge: ({ running }): readonly FamilyJudged[] =>
    running.lines
      .filter(({ called }) => called === 'pole-pass')
      .flatMap((line): readonly FamilyJudged[] => {
        const { slow, speed } = running;
        const { resolution } = slow.density;
        if (line.frequency < clear * resolution || line.frequency > speed / 4) return [];
        const found = [1, 2, 3].flatMap((times) => {
          const centre = running.at(times * speed);
          if (centre === undefined) return [];
          const sides = [-1, 1].flatMap(
            (side) => seenAt(slow, centre.frequency + side * line.frequency, 1.2 * resolution) ?? [],
          );
          const high = sides.length === 2 && sides.every(({ amplitude }) => amplitude > speaks * centre.amplitude);
          return high ? [times] : [];
        });
        if (found.length < 2) return [];
        return [
          {
            named: {
              cause: said`broken or loose rotor bars of ${line.line.element}`,
              evidence: [
                said`side lines ${measured('frequency', line.frequency)} away on both sides of ${found.map((times) => `${times}x`).join(' and ')}, as far as pole pass`,
              ],
              next: 'Record the current of the motor at full load: side lines at twice the slip frequency.',
              rivals: [
                {
                  cause: 'a load that swings with that period',
                  next: 'Record at half the load: pole pass moves, a swing does not.',
                },
              ],
            },
          },
        ];
      }),
});
