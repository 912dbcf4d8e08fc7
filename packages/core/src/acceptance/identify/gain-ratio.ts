import { asMotion, asSineDetector, fromAll, unanswered, valueIfStated } from '../../quantity/index.ts';
import { toneNear } from '../../signal/measures/tone.ts';
import { responseOverReference } from '../beside-reference.ts';
import type { CheckedRecord } from '../check/check-kind.ts';
import { chainOf, gainAt, motionPerNumber, pieceTolerance } from '../expected.ts';
import { inputPart, transducerPart } from './chain-part.ts';
import { type FoundOfChain, identifyKind, twoSided } from './identify-kind.ts';

/** Expanded uncertainty, k = 2, of a calibrator or reference whose own is not stated. */
const usualUncertainty = 0.03;
/** Lines of a reference that are needed, and a tone that stands this many standard errors out of its noise. */
const sure = 10;

/** What the channel reads of a known motion over what it should, its predicted response taken off. */
export const gainRatio = identifyKind({
  kind: 'gain-ratio',
  title: 'Gain over the designed one',
  on: ['calibrator', 'beside-reference'],
  applies: (designed) => chainOf(designed)?.transducer.signal === 'dynamic',
  identify: (looked): readonly FoundOfChain[] => {
    const found = looked.record.occasion.kind === 'calibrator' ? onCalibrator(looked) : besideReference(looked);
    const piece = pieceTolerance(looked.designed);
    if (found === undefined || !piece.known) return [];
    const { ratio, spread } = found;
    return [
      {
        quantity: 'ratio',
        value: ratio,
        interval: { low: ratio * (1 - spread), high: ratio * (1 + spread) },
        predicted: 1,
        allowed: { low: 1 + piece.value.low, high: 1 + piece.value.high },
        tolerance: 'the spread of pieces as the data sheet states it',
        // A known motion tells the whole way only; a known voltage at the input would tell which half.
        part: `${transducerPart(looked.designed)}, or ${inputPart(looked.designed)}`,
        facts: { gain: ratio },
      },
    ];
  },
});

interface Ratio {
  readonly ratio: number;
  /** Relative, 95 %. */
  readonly spread: number;
}

function onCalibrator({ designed, record }: CheckedRecord): Ratio | undefined {
  const { occasion, measures } = record;
  if (occasion.kind !== 'calibrator') return undefined;
  const { frequency, level, uncertainty } = occasion.sheet.values;
  const open = unanswered([{ of: record.recording, what: 'calibrator' }]);
  const known = fromAll(
    {
      rate: measures.rate,
      frequency: frequency.known ? frequency : open,
      level: level.known ? level : open,
      per: motionPerNumber(designed, record),
      gain: gainAt(designed),
    },
    (each) => each,
  );
  if (!known.known) return undefined;
  const { rate, per, gain } = known.value;
  const stated = { frequency: known.value.frequency as number, level: known.value.level };
  const tone = toneNear(measures.excerpt, rate, stated.frequency);
  if (!tone.known || Math.abs(tone.value.frequency / stated.frequency - 1) > 0.02) return undefined;
  const { amplitude, amplitudeError } = tone.value;
  if (amplitude < sure * amplitudeError) return undefined;
  const given = asMotion(asSineDetector(stated.level, 'peak'), per.motion, stated.frequency).value;
  const own = (valueIfStated(uncertainty) as number | undefined) ?? usualUncertainty;
  return {
    ratio: (amplitude * Math.abs(per.scale)) / (given * gain(stated.frequency)),
    spread: twoSided * Math.hypot(own / 2, amplitudeError / amplitude),
  };
}

function besideReference(looked: CheckedRecord): Ratio | undefined {
  const { occasion } = looked.record;
  const response = responseOverReference(looked);
  if (!response.known || occasion.kind !== 'beside-reference') return undefined;
  const { lines, ratio, deviation } = response.value;
  if (lines.length === 0 || !Number.isFinite(ratio)) return undefined;
  const own = (valueIfStated(occasion.sheet.values.uncertainty) as number | undefined) ?? usualUncertainty;
  return { ratio, spread: twoSided * Math.hypot(own / 2, deviation) };
}
