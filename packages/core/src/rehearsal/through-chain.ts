import type { Prediction } from '../chain/prediction.ts';
import { noiseAtEnd, type Stage } from '../chain/stage.ts';
import {
  type Answer,
  answer,
  Broken,
  fromAll,
  type Motion,
  motionOrder,
  Refusal,
  thenAnswer,
} from '../quantity/index.ts';
import { type Complex, complex, product } from '../signal/complex.ts';
import { randomFrom } from '../uncertainty/random.ts';
import { rowTransfer, splitChain } from './chain-split.ts';
import { type DrivenOutput, drivenOutput } from './electronics.ts';
import { noiseRecord, tabulatedDensity } from './noise-record.ts';
import { outputLimits } from './output-limits.ts';
import { antiAliasing, converted } from './recorded.ts';
import type { RehearsedMotion } from './rehearsed-motion.ts';
import { restVoltage } from './rest-voltage.ts';
import { SpectralFilter } from './spectral.ts';

export interface ThroughChain {
  readonly seed: number;
  /** Samples a second of the record; the rate of the motion is a whole number of times it. */
  readonly recordRate: number;
  /** As the input is built, or straight at its terminal with the direct voltage. `as designed` where left out. */
  readonly coupling?: 'as designed' | 'direct';
  /** Direct voltage of this piece at the transducer; the middle of its data sheet where left out. */
  readonly bias?: number;
}

/** What a recorder holds of a rehearsed motion. */
export interface RehearsedRecord {
  readonly of: string;
  readonly chain: string;
  readonly rate: number;
  readonly coupling: 'as designed' | 'direct';
  /** At the converter as recorded, or at the terminal where the coupling is direct. */
  readonly volts: Float64Array;
  /** What the transducer senses. */
  readonly senses: Motion;
  /** V per SI unit of what is sensed, nominal. */
  readonly sensitivity: number;
  /** The volts over the nominal sensitivity. */
  readonly motion: Float64Array;
  /** Turns of the reference shaft at each sample. */
  readonly turns: Float64Array;
  /** Direct voltage at the input terminal: bias or gap; unknown where the chain tells none. */
  readonly direct: Answer<number>;
  /** Shares of the record in which the output stood at either end of its swing, its cable took all its current, the range was full. */
  readonly clippedShare: number;
  readonly clippedAtTop: number;
  readonly clippedAtBottom: number;
  readonly slewedShare: number;
  readonly overRangeShare: number;
  /** What a reader should know of how it was made. */
  readonly notes: readonly string[];
}

/**
 * A motion through a chain: its linear parts by the two-ports of the prediction, what is not linear sample by sample
 * between them, then its noise, the filter before the converter, range and step. Unknown where the prediction is.
 */
export function throughChain(
  prediction: Prediction,
  motion: RehearsedMotion,
  request: ThroughChain,
): Answer<RehearsedRecord> {
  const { chain } = prediction;
  const every = motion.rate / request.recordRate;
  if (!(Number.isInteger(every) && every >= 1)) {
    throw new Refusal({
      read: `a record of ${request.recordRate} samples a second from a motion of ${motion.rate}`,
      expected: 'a motion sampled a whole number of times as fast as the record',
    });
  }
  return thenAnswer(
    fromAll(
      {
        stages: chain.stages,
        sensitivity: chain.sensitivity,
        limits: outputLimits(prediction, request.bias),
        range: chain.input.peakVoltage ?? answer(undefined),
        bits: chain.input.bits ?? answer(undefined),
      },
      (known) => known,
    ),
    ({ stages, sensitivity, limits, range, bits }) => {
      const direct = request.coupling === 'direct';
      const row = splitChain(chain, stages, direct);
      const noise = fromAll(
        { before: noiseAtEnd([...row.toElement, ...row.toSource]), after: noiseAtEnd(row.toRecord) },
        (known) => known,
      );
      return fromAll({ noise }, ({ noise: densities }): RehearsedRecord => {
        const filter = new SpectralFilter(motion.samples.length, motion.rate, settlingTail);
        const random = randomFrom(request.seed);
        const source = filter.through(
          motion.samples,
          sensed(motion.motion, chain.transducer.senses, [...row.toElement, ...row.toSource]),
          0,
        );
        const told = (density: (frequency: number) => number) =>
          tabulatedDensity(density, filter.resolution, motion.rate / 2);
        add(source, noiseRecord(source.length, motion.rate, told(densities.before), random));
        const driven: DrivenOutput =
          limits === undefined ? untouched(source) : drivenOutput(source, motion.rate, limits, motion.lead);
        const passes = passesDirect(row.toRecord);
        const end = filter.through(driven.samples, rowTransfer(row.toRecord), passes ? 1 : 0);
        add(end, noiseRecord(end.length, motion.rate, told(densities.after), random));
        const filtered =
          every === 1
            ? end
            : filter.through(end, (frequency) => complex(antiAliasing(frequency, request.recordRate), 0), 1);
        const rest = restVoltage(chain, request.bias);
        const standing = direct || passes ? (rest.known ? rest.value : 0) : 0;
        if (standing !== 0) for (let index = 0; index < filtered.length; index++) filtered[index]! += standing;
        const converter =
          direct || range === undefined || bits === undefined ? undefined : { range, step: (2 * range) / 2 ** bits };
        const { samples: volts, atRange } = converted(filtered, motion.lead, every, converter);
        const length = motion.samples.length - motion.lead;
        return {
          of: motion.of,
          chain: chain.of,
          rate: request.recordRate,
          coupling: request.coupling ?? 'as designed',
          volts,
          senses: chain.transducer.senses,
          sensitivity,
          motion: volts.map((each) => each / sensitivity),
          turns: Float64Array.from(volts, (_, index) => motion.turns[motion.lead + index * every]!),
          direct: rest,
          clippedShare: (driven.atTop + driven.atBottom) / length,
          clippedAtTop: driven.atTop / length,
          clippedAtBottom: driven.atBottom / length,
          slewedShare: driven.slewed / length,
          overRangeShare: atRange / volts.length,
          notes: [...chain.transducer.assumptions],
        };
      });
    },
  );
}

/** Seconds of silence behind a record, for what still rings. */
const settlingTail = 2;

/** From the motion that was made to the source: differentiated or integrated to what is sensed, then through the stages. */
function sensed(from: Motion, to: Motion, stages: readonly Stage[]): (frequency: number) => Complex {
  const row = rowTransfer(stages);
  const order = motionOrder[to] - motionOrder[from];
  return (frequency) => product(toTheOrder(complex(0, 2 * Math.PI * frequency), order), row(frequency));
}

function toTheOrder(base: Complex, order: number): Complex {
  if (order === 0) return complex(1, 0);
  const magnitude = base.im ** order;
  const quarter = ((order % 4) + 4) % 4;
  const turned = [complex(magnitude, 0), complex(0, magnitude), complex(-magnitude, 0), complex(0, -magnitude)];
  return turned[quarter] ?? complex(0, 0);
}

function passesDirect(stages: readonly Stage[]): boolean {
  return stages.every((stage) => stage.blocksDirect !== true);
}

function untouched(samples: Float64Array): DrivenOutput {
  return { samples, atTop: 0, atBottom: 0, slewed: 0 };
}

function add(to: Float64Array, what: Float64Array): void {
  if (to.length !== what.length) throw new Broken('what is added has the same length', { to: to.length });
  for (let index = 0; index < to.length; index++) to[index]! += what[index]!;
}
