import { measuredLevel, said } from '../../finding/measure.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { multiplesSeen } from '../running-record.ts';
import { type FamilyJudged, familyKind } from './family-kind.ts';

/** Twice per turn over once per turn from which it speaks. */
const speaks = 0.75;

/** Twice per turn as large as once per turn, a third multiple beside, above the limit. */
export const misalignmentFamily = familyKind({
  kind: 'misalignment',
  name: 'Misalignment',
  sources: [clause(tradePractice, 'twice per turn beside once per turn at a coupling')],
  judge: ({ running, level, boundaries, machine }): readonly FamilyJudged[] => {
    if (!machine.stated.train.elements.some(({ kind }) => kind === 'coupling')) return [];
    const seen = multiplesSeen(running, running.speed, [1, 2, 3]);
    const [first, second] = [1, 2].map((times) => seen.find((each) => each.times === times)?.line);
    if (seen.length < 3 || first === undefined || second === undefined) return [];
    const found = level(second);
    if (!found.known || !boundaries.known || found.value.value <= boundaries.value.bc.value) return [];
    if (second.amplitude < speaks * first.amplitude) return [];
    // Twice the line frequency beside a two-pole motor looks like twice per turn.
    const electrical = running.lines.some(
      ({ called, frequency }) =>
        called === 'twice-line' && Math.abs(frequency - second.frequency) <= 2 * running.slow.density.resolution,
    );
    const shown = said`twice per turn at ${measuredLevel(found.value)}, above ${measuredLevel(boundaries.value.bc)}; ${(second.amplitude / first.amplitude).toPrecision(2)} times once per turn; ${seen.length} multiples`;
    if (electrical) {
      return [
        {
          open: {
            because: said`${shown}; twice the line frequency lies there as well`,
            needs: 'a longer record that tells both apart, or one in the moment the motor is switched off',
          },
        },
      ];
    }
    return [
      {
        named: {
          cause: 'misalignment across a coupling',
          evidence: [shown],
          next: 'Read the phase across the coupling, radially and axially; check the alignment warm.',
          rivals: [
            { cause: 'a cracked or stiff coupling', next: 'Look at the coupling.' },
            { cause: 'a soft foot or looseness', next: 'Loosen one foot after the other while watching 2x.' },
            {
              cause: 'a shaft stiffer in one direction, or cracked',
              next: 'Record a run-down: 2x peaks at half the critical speed.',
            },
          ],
        },
      },
    ];
  },
});
