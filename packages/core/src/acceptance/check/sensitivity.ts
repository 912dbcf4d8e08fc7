import { measured, measuredSpan, said } from '../../finding/measure.ts';
import { asMotion, asSineDetector, fromAll, thenAnswer, unanswered, valueIfStated } from '../../quantity/index.ts';
import { toneNear } from '../../signal/measures/tone.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { responseOverReference } from '../beside-reference.ts';
import { chainOf, gainAt, motionPerNumber, pieceTolerance } from '../expected.ts';
import { humanErrorSources } from '../human-errors.ts';
import {
  type CheckedRecord,
  cannotTell,
  checkKind,
  fails,
  type Judged,
  meets,
  type RivalCause,
  wants,
} from './check-kind.ts';
import { causesOfRatio } from './sensitivity-causes.ts';

/** Expanded uncertainty of a calibrator or reference whose own is not stated. */
const usualUncertainty = 0.03;
/** A fault is called this many times the expanded uncertainty (k = 2) outside the spread of pieces: three deviations. */
const surely = 1.5;
/** A tone that is no higher than this many of its standard errors is not there. */
const sure = 10;

/** What the installed channel reads of a known motion, over that motion. */
export const sensitivity = checkKind({
  kind: 'sensitivity',
  title: 'Sensitivity',
  question: 'Does the channel read a known motion as what it is?',
  on: ['calibrator', 'beside-reference'],
  applies: (designed) => chainOf(designed)?.transducer.signal === 'dynamic',
  sources: [clause(tradePractice, 'calibrator or reference sensor, within uncertainty'), ...humanErrorSources],
  judge: (looked): readonly Judged[] =>
    looked.record.occasion.kind === 'calibrator' ? onCalibrator(looked) : besideReference(looked),
});

function onCalibrator({ designed, record }: CheckedRecord): readonly Judged[] {
  const { occasion, measures } = record;
  if (occasion.kind !== 'calibrator') return [];
  const { frequency, level, uncertainty } = occasion.sheet.values;
  const of = record.recording;
  const known = fromAll(
    {
      rate: measures.rate,
      frequency: frequency.known ? frequency : unanswered([{ of, what: 'frequency of the calibrator' }]),
      level: level.known ? level : unanswered([{ of, what: 'level of the calibrator' }]),
      per: motionPerNumber(designed, record),
      gain: gainAt(designed),
    },
    (each) => each,
  );
  if (!known.known) return wants(known.missing);
  const { rate, per, gain } = known.value;
  const stated = { frequency: known.value.frequency as number, level: known.value.level };
  const tone = thenAnswer(measures.rate, () => toneNear(measures.excerpt, rate, stated.frequency));
  if (
    !tone.known ||
    Math.abs(tone.value.frequency / stated.frequency - 1) > 0.02 ||
    tone.value.amplitude < sure * tone.value.amplitudeError
  ) {
    return [
      cannotTell({ because: said`No line of the calibrator at ${measured('frequency', stated.frequency)}.` }, [
        'a record of a few seconds with the calibrator on, at the frequency that is written down',
      ]),
    ];
  }
  const { amplitude, amplitudeError } = tone.value;
  const true_ = asMotion(asSineDetector(stated.level, 'peak'), per.motion, stated.frequency).value;
  const ratio = (amplitude * Math.abs(per.scale)) / (true_ * gain(stated.frequency));
  const own = valueIfStated(uncertainty) as number | undefined;
  return judgedRatio(designed, ratio, Math.hypot(own ?? usualUncertainty, (2 * amplitudeError) / amplitude), own);
}

function besideReference(looked: CheckedRecord): readonly Judged[] {
  const { designed, record } = looked;
  const response = responseOverReference(looked);
  if (!response.known) return wants(response.missing);
  if (record.occasion.kind !== 'beside-reference') return [];
  const own = valueIfStated(record.occasion.sheet.values.uncertainty) as number | undefined;
  const { ratio, deviation, lines } = response.value;
  if (lines.length === 0 || !Number.isFinite(ratio)) {
    return [
      cannotTell({ because: 'Channel and reference have no line in common.' }, [
        'both transducers back to back, excited well above their noise, recorded at the same time',
      ]),
    ];
  }
  return judgedRatio(designed, ratio, Math.hypot(own ?? usualUncertainty, 2 * deviation), own);
}

function judgedRatio(
  designed: CheckedRecord['designed'],
  ratio: number,
  spread: number,
  stated: number | undefined,
): readonly Judged[] {
  const piece = pieceTolerance(designed);
  if (!piece.known) return wants(piece.missing);
  const low = (1 + piece.value.low) * (1 - spread);
  const high = (1 + piece.value.high) * (1 + spread);
  const facts = {
    expected: 'found over expected is 1',
    tolerance: said`${measuredSpan('ratio', { low, high })}: spread of pieces with the uncertainty of what it is held against${stated === undefined ? ', which is not stated and taken as 3 %' : ''}`,
    found: measured('ratio', ratio, 4),
    interval: measuredSpan('ratio', { low: ratio * (1 - spread), high: ratio * (1 + spread) }),
    because: 'Every level read from this channel is wrong by the same factor.',
  };
  if (ratio >= low && ratio <= high) return [meets(facts)];
  const beyond = surely * spread;
  if (ratio >= (1 + piece.value.low) * (1 - beyond) && ratio <= (1 + piece.value.high) * (1 + beyond)) {
    return [
      cannotTell({ ...facts, because: 'It lies outside by no more than what it is held against may be off.' }, [
        'the same with a calibrator or a reference of half the uncertainty, or the certificate of the piece',
      ]),
    ];
  }
  // A piece may stand at the very end of its spread: the two add up.
  const reach = spread + Math.max(piece.value.high, -piece.value.low);
  return [fails(facts, causesOfRatio(ratio, reach, otherCauses(ratio)))];
}

function otherCauses(ratio: number): readonly RivalCause[] {
  const evidence = said`found over expected is ${ratio.toPrecision(3)}`;
  return [
    {
      cause: 'another transducer than designed, or one that was damaged',
      evidence,
      next: 'Read the label; put a known good transducer on the same cable.',
    },
    {
      cause: 'gain or range of the input, or of an amplifier on the way',
      evidence,
      next: 'Feed a known voltage in place of the transducer: what is still wrong then lies behind it.',
    },
    {
      cause: 'the cable loads the transducer, or leaks: another length, water, a bad contact',
      evidence,
      next: 'Read the transducer through a short known cable, then through the installed one.',
    },
    {
      cause: 'the calibrator or reference is off: battery, load too heavy, wrong level set',
      evidence,
      next: 'Repeat with another transducer of known sensitivity.',
    },
  ];
}
