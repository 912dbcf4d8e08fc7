import type { LoopCard } from '../chain/input/input-kind.ts';
import type { Prediction } from '../chain/prediction.ts';
import { transfer } from '../chain/stage.ts';
import { type Answer, answer, type Detector, fromAll, motionOrder, unanswered } from '../quantity/index.ts';
import { complex, product, scaled } from '../signal/complex.ts';
import type { ChainChange } from './defect/defect-kind.ts';
import { toTheOrder } from './differentiation.ts';
import type { RehearsedMotion } from './rehearsed-motion.ts';
import { SpectralFilter } from './spectral.ts';
import type { RehearsedRecord, ThroughChain } from './through-chain.ts';

/** Time constant of a detecting sensor whose data sheet states no settling. Common practice, no source. */
const usualTimeConstant = 1;
/** Settling to within a per cent takes about five time constants. */
const constantsToSettle = 5;
/** Where a loop stops following its range: NAMUR NE 43, 20.5 mA (second-hand). */
const endOfRange = 0.0205;

/**
 * A motion through a sensor that detects inside: its acceleration limit, its band, its detector with its time constant,
 * 4 + 16·x/range mA up to 20.5 mA or to what the voltage of the loop drives, then the counts of the card.
 */
export function loopRecord(
  predicted: Prediction,
  motion: RehearsedMotion,
  request: ThroughChain,
  changes: readonly ChainChange[],
): Answer<RehearsedRecord> {
  const { chain, loop } = predicted;
  const { oneNumber, senses, settling } = chain.transducer;
  const card = chain.input.loopCard;
  const driven: Answer<number> =
    loop === undefined
      ? answer(Number.POSITIVE_INFINITY)
      : fromAll(
          { spare: loop.spare, ohms: loop.resistance },
          ({ spare, ohms }) => (spare + loop.failureCurrent * ohms) / ohms,
        );
  return fromAll(
    {
      stages: chain.transducer.stages,
      sensitivity: chain.transducer.sensitivity,
      range: oneNumber!.range,
      driven,
      card: fromAll({ ...(card ?? noCard(chain.of)) }, (known) => known),
      settling: settling ?? answer(usualTimeConstant * constantsToSettle),
      limit: chain.transducer.ceilings[0] ?? answer(undefined),
    },
    (known): RehearsedRecord => {
      const filter = new SpectralFilter(motion.samples.length, motion.rate, 2);
      const order = motionOrder[senses] - motionOrder[motion.motion];
      const surface = motion.samples.slice();
      let beyond = 0;
      const limit = known.limit;
      if (limit !== undefined && limit.motion === motion.motion) {
        for (let index = 0; index < surface.length; index++) {
          if (Math.abs(surface[index]!) <= limit.peak) continue;
          surface[index] = Math.sign(surface[index]!) * limit.peak;
          beyond += 1;
        }
      }
      const inBand = filter.through(
        surface,
        (frequency) =>
          scaled(
            product(toTheOrder(complex(0, 2 * Math.PI * frequency), order), transfer(known.stages, frequency)),
            1 / known.sensitivity,
          ),
        0,
      );
      const constant = known.settling / constantsToSettle;
      const level = detected(inBand, motion.rate, known.range.detector, constant, motion.lead);
      const scale = changes.reduce((factor, each) => factor * (each.scale ?? 1) * (each.gain ?? 1), 1);
      const top = Math.min(endOfRange, known.driven, ...changes.map((each) => each.loopTop ?? endOfRange));
      const every = motion.rate / request.recordRate;
      const count = Math.ceil((level.length - motion.lead) / every);
      const dead = changes.findLast((each) => each.dead) !== undefined;
      const amperes = Float64Array.from({ length: count }, (_, index) => {
        if (dead) return 0;
        const share = (Math.abs(scale) * level[motion.lead + index * every]!) / known.range.value;
        return Math.min(top, 0.004 + 0.016 * share);
      });
      const read = known.card;
      const perAmpere = (read.countsAtHigh - read.countsAtLow) / (read.currentAtHigh - read.currentAtLow);
      const atTop = amperes.reduce((sum, each) => sum + (each >= top ? 1 : 0), 0);
      return {
        of: motion.of,
        chain: chain.of,
        rate: request.recordRate,
        coupling: request.coupling ?? 'as designed',
        volts: amperes.map((each) => each * read.resistance),
        senses,
        sensitivity: known.sensitivity,
        motion: amperes.map((each) => ((each - 0.004) / 0.016) * known.range.value),
        turns: Float64Array.from(amperes, (_, index) => motion.turns[motion.lead + index * every]!),
        direct: answer(0.004 * read.resistance),
        clippedShare: atTop / count,
        clippedAtTop: atTop / count,
        clippedAtBottom: 0,
        slewedShare: 0,
        overRangeShare: 0,
        beyondLimitShare: beyond / motion.samples.length,
        loop: {
          amperes,
          counts: amperes.map((each) => Math.round(read.countsAtLow + (each - read.currentAtLow) * perAmpere)),
          range: known.range,
        },
        notes: [
          ...chain.transducer.assumptions,
          `The detector has a time constant of ${Number(constant.toPrecision(3))} s${settling === undefined ? ', as none is stated' : ', a fifth of its settling'}.`,
        ],
      };
    },
  );
}

function noCard(of: string): LoopCard {
  const missing = unanswered([{ of, what: 'card that reads a loop' }]);
  return {
    resistance: missing,
    currentAtLow: missing,
    currentAtHigh: missing,
    countsAtLow: missing,
    countsAtHigh: missing,
  };
}

/** What a detector shows: root of the running mean square, or the running peak that decays with the time constant. */
function detected(
  samples: Float64Array,
  rate: number,
  detector: Detector,
  constant: number,
  lead: number,
): Float64Array {
  const share = 1 - Math.exp(-1 / (constant * rate));
  const shown = new Float64Array(samples.length);
  // A machine that has run for long has a settled detector.
  let [square, average, peak] = [0, 0, 0];
  for (let index = lead; index < samples.length; index++) {
    square += samples[index]! ** 2 / (samples.length - lead);
    average += Math.abs(samples[index]!) / (samples.length - lead);
  }
  for (let index = 0; index < samples.length; index++) {
    const size = Math.abs(samples[index]!);
    square += share * (size * size - square);
    average += share * (size - average);
    peak = size > peak ? size : peak * (1 - share);
    shown[index] = shows[detector]({ square, average, peak });
  }
  return shown;
}

const shows: Readonly<Record<Detector, (of: { square: number; average: number; peak: number }) => number>> = {
  rms: ({ square }) => Math.sqrt(square),
  'derived-peak': ({ square }) => Math.sqrt(2 * square),
  peak: ({ peak }) => peak,
  'peak-to-peak': ({ peak }) => 2 * peak,
  average: ({ average }) => average,
};
