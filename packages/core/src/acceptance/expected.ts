import type { MeasuringChain } from '../chain/chain.ts';
import { lowerCornerOfTransducer } from '../chain/lower-corner.ts';
import type { Prediction } from '../chain/prediction.ts';
import { terminalVoltages } from '../chain/terminal-voltages.ts';
import type { DesignedPoint } from '../design/design.ts';
import {
  type Answer,
  answer,
  answerOf,
  fromAll,
  type Motion,
  type Span,
  type Stated,
  type Tolerance,
  unanswered,
} from '../quantity/index.ts';
import { type Complex, magnitude } from '../signal/complex.ts';
import { motionOf, type RecordedHow, voltsPerNumber } from './measured-record.ts';

/** The chain of a point as predicted; a point without a chain has nothing to be held against. */
export function predictionOf(designed: DesignedPoint): Prediction | undefined {
  return designed.appraisal?.prediction;
}

export function chainOf(designed: DesignedPoint): MeasuringChain | undefined {
  return predictionOf(designed)?.chain;
}

/** The direct voltage a meter shows across the pair at the input, machine at rest; nothing where a chain tells none. */
export function restAtInput(designed: DesignedPoint): Answer<Span<'voltage'>> | undefined {
  const chain = chainOf(designed);
  if (chain === undefined) return undefined;
  return terminalVoltages(chain).findLast((each) => each.state === 'at rest')?.voltage;
}

/** Volts at the input per motion in SI, well inside the band. */
export function sensitivityAtInput(designed: DesignedPoint): Answer<number> {
  const chain = chainOf(designed);
  return chain?.sensitivity ?? noChain(designed);
}

/**
 * Noise density predicted at the input, V/√Hz: the density in the sensed motion, as the analyst sees it, times the
 * nominal sensitivity.
 */
export function noiseAtInput(designed: DesignedPoint): Answer<(frequency: number) => number> {
  const predicted = predictionOf(designed);
  if (predicted === undefined) return noChain(designed);
  return fromAll(
    { noise: predicted.noise, sensitivity: predicted.chain.sensitivity },
    ({ noise, sensitivity }) =>
      (frequency: number) =>
        noise(frequency) * sensitivity,
  );
}

/** Noise and run-out that a data sheet states for the whole band, rms in volts at the input; 0 where it states none. */
export function residualAtInput(designed: DesignedPoint, frequency: number): number {
  const predicted = predictionOf(designed);
  if (predicted === undefined) return 0;
  const { residual } = predicted;
  const { sensitivity } = predicted.chain;
  return residual.known && sensitivity.known ? residual.value(frequency) * Math.abs(sensitivity.value) : 0;
}

/** Gain from true motion to the input relative to the nominal sensitivity: 1 well inside the band. */
export function gainAt(designed: DesignedPoint): Answer<(frequency: number) => number> {
  const predicted = predictionOf(designed);
  if (predicted === undefined) return noChain(designed);
  return fromAll(
    { response: predicted.response },
    ({ response }) =>
      (frequency: number) =>
        magnitude(response(frequency)),
  );
}

/** The same with its phase: indicated over true motion, with the nominal sensitivity set. */
export function responseAt(designed: DesignedPoint): Answer<(frequency: number) => Complex> {
  return predictionOf(designed)?.response ?? noChain(designed);
}

/** How far the sensitivity of one piece may lie from the nominal one, as its data sheet says. */
export function pieceTolerance(designed: DesignedPoint): Answer<Tolerance> {
  const sheet = chainOf(designed)?.parts.transducer.sheet;
  if (sheet === undefined) return noChain(designed);
  const values = sheet.values as { readonly sensitivityTolerance?: Stated<Tolerance> };
  return answerOf(values.sensitivityTolerance, sheet.of, 'tolerance of the sensitivity');
}

/** What a number of a record stands for as a motion: as it is recorded, or its volts over the sensitivity as designed. */
export interface MotionPerNumber {
  readonly motion: Motion;
  /** Motion in SI for a recorded number of 1. */
  readonly scale: number;
}

export function motionPerNumber(designed: DesignedPoint, record: RecordedHow): Answer<MotionPerNumber> {
  const { unit } = record.statement;
  const motion = unit.known ? motionOf(unit.value) : undefined;
  if (motion !== undefined) return answer({ motion, scale: 1 });
  const chain = chainOf(designed);
  if (chain === undefined) return noChain(designed);
  return fromAll(
    { volts: voltsPerNumber(record), sensitivity: sensitivityAtInput(designed) },
    ({ volts, sensitivity }) => ({ motion: chain.transducer.senses, scale: volts / sensitivity }),
  );
}

/**
 * The lower −3 dB corner of the whole chain in hertz, by bisection between 1 mHz and 1 kHz where the gain passes 1/√2
 * on its way up; 0 of a chain that passes direct voltage.
 */
export function lowerCorner(designed: DesignedPoint): Answer<number> {
  const gain = gainAt(designed);
  if (!gain.known) return gain;
  const at = gain.value;
  let [low, high] = [1e-3, 1e3];
  if (at(low) > Math.SQRT1_2) return answer(0);
  if (at(high) < Math.SQRT1_2) return unanswered([{ of: designed.point.of, what: 'lower corner below 1 kHz' }]);
  for (let step = 0; step < 60; step++) {
    const middle = Math.sqrt(low * high);
    if (at(middle) < Math.SQRT1_2) low = middle;
    else high = middle;
  }
  return answer(Math.sqrt(low * high));
}

/** The lower −3 dB corner of the transducer alone in hertz, without the coupling of the input; 0 where it has none. */
export function cornerOfTransducer(designed: DesignedPoint): Answer<number> {
  const predicted = predictionOf(designed);
  return predicted === undefined ? noChain(designed) : lowerCornerOfTransducer(predicted);
}

/** The mounted resonance as predicted, where the transducer has one. */
export function resonanceOf(designed: DesignedPoint): Answer<number> | undefined {
  return chainOf(designed)?.transducer.mountedResonance;
}

function noChain(designed: DesignedPoint): Answer<never> {
  return unanswered([{ of: designed.point.of, what: 'chain' }]);
}
