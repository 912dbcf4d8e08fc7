import type { MeasuringChain } from '../chain/chain.ts';
import type { Prediction } from '../chain/prediction.ts';
import { terminalVoltages } from '../chain/terminal-voltages.ts';
import type { DesignedPoint } from '../design/design.ts';
import { type Answer, answer, fromAll, type Span, unanswered } from '../quantity/index.ts';
import { magnitude } from '../signal/complex.ts';

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

/** The mounted resonance as predicted, where the transducer has one. */
export function resonanceOf(designed: DesignedPoint): Answer<number> | undefined {
  return chainOf(designed)?.transducer.mountedResonance;
}

function noChain(designed: DesignedPoint): Answer<never> {
  return unanswered([{ of: designed.point.of, what: 'chain' }]);
}
