import { measured, said, saidTogether } from '../../finding/measure.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { chainOf } from '../expected.ts';
import { linesSeen } from '../lines-seen.ts';
import { explained, type MachineLine, nearMains } from '../machine-at-speed.ts';
import { runningRecord } from '../running-record.ts';
import { cannotTell, checkKind, fails, type Judged, meets, wants } from './check-kind.ts';

/** How far the speed is trusted, relative: a line that follows it is looked for only where that is narrow enough. */
const speedTrust = 0.002;
/** Lines of the spectrum within which a folded one must lie. */
const nearLines = 1.5;

/** Lines that only a known line above half the sampling rate explains, folded back. */
export const aliasing = checkKind({
  kind: 'aliasing',
  title: 'Folded lines',
  question: 'Does something from above half the sampling rate appear below it?',
  on: ['running'],
  applies: (designed) => chainOf(designed)?.transducer.signal === 'dynamic',
  sources: [clause(tradePractice, 'a line f above half the rate R appears at |f − n·R|')],
  judge: (looked): readonly Judged[] => {
    const running = runningRecord(looked);
    if (!running.known) return wants(running.missing);
    const { fine, lines } = running.value;
    const { rate, resolution } = fine.density;
    const within = nearLines * resolution;
    const above = lines.filter(({ frequency }) => frequency > rate / 2 && frequency < 10 * rate);
    const told = above.filter((each) => trusted(each) <= within);
    const facts = {
      expected: 'no line that only a folded one explains',
      tolerance: said`${measured('frequency', within)}, by the spacing of its lines`,
      because: 'A folded line looks like a fault frequency that the machine does not have.',
    };
    if (told.length === 0) {
      const because =
        above.length === 0
          ? said`No line that is known of this machine lies above ${measured('frequency', rate / 2)}.`
          : 'The lines above half the rate follow a speed that is not known finely enough.';
      return [
        cannotTell({ ...facts, because }, [
          'the same record again at twice the sampling rate: folded lines move, true ones stay',
        ]),
      ];
    }
    const seen = linesSeen(fine);
    const below = lines.filter(({ frequency }) => frequency <= rate / 2);
    const folded = told.flatMap((each) => {
      const frequency = foldedLine(each.frequency, rate);
      const line = seen.find((one) => Math.abs(one.frequency - frequency) <= within);
      if (line === undefined || frequency < 5 * resolution) return [];
      const other =
        nearMains(line.frequency, within) ||
        explained(below, line.frequency, within, 1).length > 0 ||
        sidesOf(below, line.frequency, within);
      return other ? [] : [{ each, line }];
    });
    if (folded.length === 0) {
      return [meets({ ...facts, found: said`none of ${told.length} known lines above half the rate is seen folded` })];
    }
    const found = saidTogether(
      folded.map(
        ({ each, line }) =>
          said`${measured('frequency', line.frequency, 5)} for ${each.line.name} at ${measured('frequency', each.frequency, 5)}`,
      ),
      '; ',
    );
    return [
      fails({ ...facts, found }, [
        {
          cause: 'the recorder has no low-pass before its converter, or one that is set too high',
          evidence: found,
          next: 'Record again at twice the rate: a folded line moves, a true one stays.',
        },
        {
          cause: 'the record was thinned out afterwards without a filter',
          evidence: found,
          next: 'Ask for the record as it left the recorder.',
        },
        {
          cause: 'a true line of something the machine file does not know',
          evidence: found,
          next: 'Record again at twice the rate: it stays where it is.',
        },
      ]),
    ];
  },
});

function trusted({ low, high, frequency, still }: MachineLine): number {
  return (high - low) / 2 + (still ? 0 : speedTrust * frequency);
}

/** Where a frequency appears: |f − n·R| with the nearest multiple of the rate. */
export function foldedLine(frequency: number, rate: number): number {
  return Math.abs(frequency - Math.round(frequency / rate) * rate);
}

/** Lines have side lines at shaft speeds: those explain what stands beside a strong one. */
function sidesOf(lines: readonly MachineLine[], frequency: number, within: number): boolean {
  const turns = lines.filter(({ called }) => called === '1x');
  return lines.some((line) =>
    turns.some((turn) =>
      [1, 2, 3].some((times) =>
        [-1, 1].some((side) => Math.abs(line.frequency + side * times * turn.frequency - frequency) <= within),
      ),
    ),
  );
}
