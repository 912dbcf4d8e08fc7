import { measured, said } from '../../finding/measure.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { seenAt } from '../lines-seen.ts';
import { type FamilyJudged, familyKind } from './family-kind.ts';

/** Side lines from this share of their mesh line on: a sound pair shows smaller ones. */
const speaks = 0.5;
const pairs = [1, 2, 3] as const;
const fewest = 2;

/** Mesh and its multiple, with side lines of one wheel on both sides, more than half as large. */
export const gearFamily = familyKind({
  kind: 'gear',
  name: 'Gear wear or eccentricity',
  sources: [clause(tradePractice, 'side lines of one wheel around mesh and its multiples')],
  judge: ({ running, machine }): readonly FamilyJudged[] =>
    running.lines
      .filter(({ called }) => called === 'mesh')
      .flatMap((mesh): readonly FamilyJudged[] => {
        const { fine, lines } = running;
        const { resolution } = fine.density;
        const centres = [1, 2].flatMap((times) => running.at(times * mesh.frequency) ?? []);
        if (centres.length < 2) return [];
        const element = machine.stated.train.elements.find(({ name }) => name === mesh.line.element);
        const shafts = Object.values((element?.shafts ?? {}) as Readonly<Record<string, string>>);
        return lines
          .filter(({ called, line }) => called === '1x' && shafts.includes(line.element))
          .flatMap((wheel): readonly FamilyJudged[] => {
            if (wheel.frequency < 4 * resolution) return [];
            const whole = centres.filter((centre) => {
              const both = pairs.filter((times) =>
                [-1, 1].every((side) => {
                  const line = seenAt(fine, centre.frequency + side * times * wheel.frequency, 1.5 * resolution);
                  return line !== undefined && (times > 1 || line.amplitude > speaks * centre.amplitude);
                }),
              );
              return both.length >= fewest && both[0] === 1;
            });
            if (whole.length < 2) return [];
            return [
              {
                named: {
                  cause: said`wear, eccentricity or a damaged tooth of the wheel on ${wheel.line.element}`,
                  evidence: [
                    said`side lines ${measured('frequency', wheel.frequency, 4)} apart on both sides of ${whole.length} mesh lines, more than half as large`,
                  ],
                  next: 'Look at the teeth; average over turns of each shaft and see where in the turn it stands.',
                  rivals: [
                    { cause: 'a load that swings once per turn', next: 'Record at another load.' },
                    {
                      cause: 'a bent shaft or a loose bearing of that wheel',
                      next: 'Compare once per turn at both bearings.',
                    },
                  ],
                },
              },
            ];
          });
      }),
});
