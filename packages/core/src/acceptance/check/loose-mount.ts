import { measured, said } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { resonanceOf } from '../expected.ts';
import { multiplesSeen, runningRecord } from '../running-record.ts';
import { cannotTell, checkKind, fails, type Judged, meets, type RivalCause, wants } from './check-kind.ts';
import { decayFound } from './resonance.ts';

const multiples = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10] as const;
const halves = [0.5, 1.5, 2.5, 3.5, 4.5] as const;
/** So many of each are the hammering of something loose. */
export const hammering = { multiples: 6, halves: 2 } as const;
/** A resonance below this share of the prediction is a mount that gave way. */
const lowered = 0.75;

/** Multiples and halves of once per turn, together with a resonance that taps found too low. */
export const looseMount = checkKind({
  kind: 'loose-mount',
  title: 'Loose mount while running',
  question: 'Does the transducer rattle on its surface?',
  on: ['running'],
  applies: (designed) => resonanceOf(designed) !== undefined,
  sources: [clause(tradePractice, 'multiples and halves of 1x with a moved resonance')],
  judge: (looked): readonly Judged[] => {
    const { designed, record, others } = looked;
    const known = fromAll({ running: runningRecord(looked), predicted: resonanceOf(designed)! }, (each) => each);
    if (!known.known) return wants(known.missing);
    const { running, predicted } = known.value;
    const { speed } = running;
    const facts = {
      expected: 'no hammering with a lowered resonance',
      tolerance: said`${hammering.multiples} multiples of 1x, without taps ${hammering.halves} halves too; a resonance below ${lowered} of the prediction`,
      because: 'A transducer that rattles shows impacts the machine does not have.',
    };
    if (running.slow.density.resolution > 0.1 * speed) {
      return [
        cannotTell({ ...facts, because: 'Multiples and halves of 1x are not told apart.' }, [
          said`${measured('time', 80 / speed)} or more at a steady speed`,
        ]),
      ];
    }
    const whole = multiplesSeen(running, speed, multiples).length;
    const half = multiplesSeen(running, speed, halves).length;
    const found = said`${whole} multiples and ${half} halves of 1x`;
    if (whole < hammering.multiples) return [meets({ ...facts, found })];
    const tapped = others.find((each) => each.at === record.at && each.occasion.kind === 'taps');
    const decay = tapped === undefined ? undefined : decayFound(tapped, predicted);
    if (decay?.known !== true) {
      // Multiples alone are nothing unusual of a machine; with halves between them something hammers.
      if (half < hammering.halves) return [meets({ ...facts, found })];
      return [
        cannotTell(
          { ...facts, found, because: 'Hammering is seen; whether it is the mount or the machine, taps tell.' },
          ['a tap test beside the transducer, the machine stopped, at a high sampling rate'],
        ),
      ];
    }
    const { frequency } = decay.value;
    const both = said`${found}; resonance at ${measured('frequency', frequency)}, predicted ${measured('frequency', predicted)}`;
    // The resonance stands where it should: what hammers is in the machine.
    if (frequency >= lowered * predicted) return [meets({ ...facts, found: both })];
    return [fails({ ...facts, found: both }, causesOf(both))];
  },
});

function causesOf(evidence: Judged['found']): readonly RivalCause[] {
  return [
    {
      cause: 'the mount is loose: stud, magnet or transducer',
      evidence,
      next: 'Tighten to the stated torque, tap and record again.',
    },
    {
      cause: 'the cover or bracket under it is loose',
      evidence,
      next: 'Put the transducer on the bare housing beside it.',
    },
    {
      cause: 'the machine itself is loose, and the mount soft besides',
      evidence,
      next: 'Compare with a transducer that was tapped and found firm.',
    },
  ];
}
