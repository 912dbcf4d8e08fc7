import { measured, said } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { linesSeen, type SeenLine } from '../lines-seen.ts';
import { nearMains } from '../machine-at-speed.ts';
import { multiplesSeen, type RunningRecord, runningRecord } from '../running-record.ts';
import { declaredSpeed, speedMarked } from '../speed-of-record.ts';
import { cannotTell, checkKind, fails, type Judged, meets, type RivalCause, wants } from './check-kind.ts';

/** How far the recorded speed may lie from the declared one. */
const allowed = 0.01;
/** The spectrum must tell lines this share of the speed apart. */
const apart = 0.05;
/** Multiples that are looked for, and how many of them make a family with the first. */
const multiples = [1, 2, 3, 4, 5] as const;
const family = 3;

/** Whether the machine turned as fast as was written down. */
export const recordedSpeed = checkKind({
  kind: 'recorded-speed',
  title: 'Declared against recorded speed',
  question: 'Was the machine at the speed that was written down, and the record at the rate?',
  on: ['running'],
  applies: (designed) => designed.appraisal?.prediction.chain.transducer.signal === 'dynamic',
  sources: [clause(tradePractice, 'a line at 1x with multiples of it within 1 % of the declared speed')],
  judge: (looked): readonly Judged[] => {
    const { record, serving } = looked;
    const declared = declaredSpeed(record);
    const known = fromAll(
      { declared, running: runningRecord(looked, declared.known ? declared.value : undefined) },
      (each) => each,
    );
    if (!known.known) return wants(known.missing);
    const { declared: speed, running } = known.value;
    const facts = {
      expected: measured('shaft speed', speed),
      tolerance: said`${100 * allowed} %: as exactly as a speed is read`,
      because: 'Every line of the machine is looked for by the speed; a wrong rate of the recorder moves all of them.',
    };
    const marked = speedMarked(serving);
    if (marked !== undefined) {
      const found = said`${measured('shaft speed', marked, 5)} by the mark of each turn`;
      return Math.abs(marked / speed - 1) <= allowed
        ? [meets({ ...facts, found })]
        : [fails({ ...facts, found }, causesOf(marked / speed, found))];
    }
    const { resolution } = running.slow.density;
    if (resolution > apart * speed) {
      return [
        cannotTell({ ...facts, because: said`Its lines stand ${measured('frequency', resolution)} apart.` }, [
          said`${measured('time', 8 / (apart * speed))} or more at a steady speed`,
        ]),
      ];
    }
    const seen = multiplesSeen(running, speed, multiples);
    const first = seen.find(({ times }) => times === 1)?.line;
    if (first !== undefined && (seen.length >= 2 || largestBelow(running, 2.5 * speed) === first.frequency)) {
      const found = said`${measured('shaft speed', first.frequency, 5)}, with ${seen.length} of ${multiples.length} multiples`;
      const off = Math.abs(first.frequency / speed - 1);
      if (off <= allowed + (0.1 * resolution) / speed) return [meets({ ...facts, found })];
    }
    const others = otherSpeeds(running, speed);
    if (first === undefined && others.length === 1) {
      const other = others[0]!;
      const found = said`a line at ${measured('shaft speed', other.frequency, 5)} with its multiples, none at the declared speed`;
      return [fails({ ...facts, found }, causesOf(other.frequency / speed, found))];
    }
    return [
      cannotTell(
        {
          ...facts,
          found: first === undefined ? 'no line at the declared speed' : 'a line near it, without multiples',
          because: 'Once per turn and its multiples do not stand out.',
        },
        ['the mark of each turn recorded beside, or a higher load'],
      ),
    ];
  },
});

function largestBelow(running: RunningRecord, most: number): number | undefined {
  const { slow, fine } = running;
  const lines = linesSeen(most < 0.35 * slow.density.rate ? slow : fine).filter(({ frequency }) => frequency < most);
  return lines.reduce<SeenLine | undefined>((a, b) => (a === undefined || b.amplitude > a.amplitude ? b : a), undefined)
    ?.frequency;
}

/** First lines of families that nothing else of the machine explains. */
function otherSpeeds(running: RunningRecord, speed: number): readonly SeenLine[] {
  const { slow, lines } = running;
  const within = slow.density.resolution;
  return linesSeen(slow).filter((line) => {
    const { frequency } = line;
    if (frequency < speed / 5 || frequency > 5 * speed || nearMains(frequency, within)) return false;
    // A family of its own is none of a line that is known there; far multiples of slow lines would explain anything.
    if (lines.some(({ low, high }) => frequency >= low - within && frequency <= high + within)) return false;
    const seen = multiplesSeen(running, frequency, multiples);
    if (seen.length < family || seen[0]!.times !== 1) return false;
    // The lowest of a family is its first line: none of its parts may be seen.
    return ![2, 3].some((part) => running.at(frequency / part) !== undefined);
  });
}

function causesOf(ratio: number, evidence: Judged['found']): readonly RivalCause[] {
  return [
    {
      cause: 'the machine turned at another speed than was written down',
      evidence: said`${evidence}, ${ratio.toPrecision(3)} times the declared speed`,
      next: 'Read the speed at the machine while recording; record the mark of each turn beside.',
    },
    {
      cause: 'the sampling rate is another than stated: resampled by a viewer, or typed wrongly',
      evidence,
      next: 'Record a known tone, of a calibrator or of the mains, and compare.',
    },
    {
      cause: 'the speed of another shaft was written down',
      evidence,
      next: 'Compare with the speeds of the other shafts of the train.',
    },
  ];
}
