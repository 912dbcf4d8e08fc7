import type { MeasuringChain } from '../chain/chain.ts';
import { lowerCornerOfTransducer } from '../chain/lower-corner.ts';
import type { Prediction } from '../chain/prediction.ts';
import { noiseAtEnd, type Stage } from '../chain/stage.ts';
import {
  type Answer,
  answer,
  Broken,
  fromAll,
  type Level,
  type Motion,
  Refusal,
  thenAnswer,
} from '../quantity/index.ts';
import { complex } from '../signal/complex.ts';
import { type Random, randomFrom } from '../uncertainty/random.ts';
import { rowTransfer, splitChain } from './chain-split.ts';
import type { ChainChange, DefectContext, DefectStatement } from './defect/defect-kind.ts';
import { changeOf } from './defect/kinds.ts';
import { sensed } from './differentiation.ts';
import { type DrivenOutput, drivenOutput } from './electronics.ts';
import { loopRecord } from './loop-record.ts';
import { withinMechanicalLimits } from './mechanical-limits.ts';
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
  /** What is wrong with the chain as installed; nothing where left out. */
  readonly defects?: readonly DefectStatement[];
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
  /** Share in which a mechanical limit of the transducer was passed: its gap, its travel, what its integrator takes. */
  readonly beyondLimitShare: number;
  /** Of a loop: its current, and what the card makes of it; `motion` is then the level indicated. */
  readonly loop?: { readonly amperes: Float64Array; readonly counts: Float64Array; readonly range: Level<Motion> };
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
  const every = motion.rate / request.recordRate;
  if (!(Number.isInteger(every) && every >= 1)) {
    throw new Refusal({
      read: `a record of ${request.recordRate} samples a second from a motion of ${motion.rate}`,
      expected: 'a motion sampled a whole number of times as fast as the record',
    });
  }
  const changes = (request.defects ?? []).map(changeOf);
  if (prediction.chain.transducer.oneNumber !== undefined) return loopRecord(prediction, motion, request, changes);
  const { chain } = prediction;
  const bias = changes.findLast((each) => each.bias !== undefined)?.bias ?? request.bias;
  return thenAnswer(
    fromAll(
      {
        stages: chain.stages,
        sensitivity: chain.sensitivity,
        limits: outputLimits(prediction, bias, changes),
        corner: lowerCornerOfTransducer(prediction),
        range: chain.input.peakVoltage ?? answer(undefined),
        bits: chain.input.bits ?? answer(undefined),
      },
      (known) => known,
    ),
    ({ stages: designed, sensitivity, limits, corner, range, bits }) => {
      const direct = request.coupling === 'direct';
      const stages = changes.reduce((row, each) => each.stages?.(row) ?? row, designed);
      const row = splitChain(chain, stages, direct);
      const before = [...row.toElement, ...row.toSource];
      const noise = fromAll({ before: noiseAtEnd(before), after: noiseAtEnd(row.toRecord) }, (known) => known);
      return fromAll({ noise }, ({ noise: densities }): RehearsedRecord => {
        const filter = new SpectralFilter(motion.samples.length, motion.rate, settlingTail);
        const random = randomFrom(request.seed);
        const context: DefectContext = { ...motion, lowerCorner: corner, sensitivity, random };
        const surface = changes.some((each) => each.atSurface) ? motion.samples.slice() : motion.samples;
        for (const each of changes) each.atSurface?.(surface, context);
        const louder = changes.reduce((factor, each) => factor * (each.noise ?? 1), 1);
        const hiss = (density: (frequency: number) => number, length: number) =>
          noiseRecord(
            length,
            motion.rate,
            tabulatedDensity((frequency) => louder * density(frequency), filter.resolution, motion.rate / 2),
            random,
          );
        const { senses } = chain.transducer;
        const limited = withinMechanicalLimits(surface, motion.motion, chain, filter, row.toElement);
        const source = filter.through(limited.samples, sensed(limited.motion, senses, limited.rest(row)), 0);
        if (changes.some((each) => each.dead)) source.fill(0);
        add(source, hiss(densities.before, source.length));
        addResidual(source, before, random);
        for (const each of changes) each.atSource?.(source, context);
        const driven: DrivenOutput =
          limits === undefined ? untouched(source) : drivenOutput(source, motion.rate, limits, motion.lead);
        const passes = row.toRecord.every((stage) => stage.blocksDirect !== true);
        // Hum and drift enter between the line and the coupling of the input.
        const [line, input] = atTerminal(row.toRecord);
        const terminal = filter.through(driven.samples, rowTransfer(line), 1);
        for (const each of changes) each.atTerminal?.(terminal, context);
        const end = input.length === 0 ? terminal : filter.through(terminal, rowTransfer(input), passes ? 1 : 0);
        add(end, hiss(densities.after, end.length));
        const unfiltered = every === 1 || changes.some((each) => each.withoutFilter);
        const filtered = unfiltered
          ? end
          : filter.through(end, (frequency) => complex(antiAliasing(frequency, request.recordRate), 0), 1);
        const rest = restOf(chain, request.bias, changes);
        const gain = changes.reduce((factor, each) => factor * (each.gain ?? 1), 1);
        const standing = (direct || passes) && rest.known ? rest.value : 0;
        for (let index = 0; index < filtered.length; index++) filtered[index] = gain * filtered[index]! + standing;
        const converter =
          direct || range === undefined || bits === undefined ? undefined : { range, step: (2 * range) / 2 ** bits };
        const { samples: volts, atRange } = converted(filtered, motion.lead, every, converter);
        const length = motion.samples.length - motion.lead;
        const scale = changes.reduce((factor, each) => factor * (each.scale ?? 1), 1) / sensitivity;
        return {
          of: motion.of,
          chain: chain.of,
          rate: request.recordRate,
          coupling: request.coupling ?? 'as designed',
          volts,
          senses,
          sensitivity,
          motion: volts.map((each) => each * scale),
          turns: Float64Array.from(volts, (_, index) => motion.turns[motion.lead + index * every]!),
          direct: rest,
          clippedShare: (driven.atTop + driven.atBottom) / length,
          clippedAtTop: driven.atTop / length,
          clippedAtBottom: driven.atBottom / length,
          slewedShare: driven.slewed / length,
          overRangeShare: atRange / volts.length,
          beyondLimitShare: limited.beyond / length,
          notes: [...chain.transducer.assumptions, ...limited.notes],
        };
      });
    },
  );
}

function restOf(chain: MeasuringChain, bias: number | undefined, changes: readonly ChainChange[]): Answer<number> {
  const found = changes.findLast((each) => each.rest !== undefined)?.rest;
  return found === undefined ? restVoltage(chain, bias) : answer(found);
}

/** The row up to the input terminal, and from its coupling on; where nothing couples, all of it lies before. */
function atTerminal(stages: readonly Stage[]): readonly [readonly Stage[], readonly Stage[]] {
  const place = stages.findIndex((stage) => stage.blocksDirect === true);
  return place < 0 ? [stages, []] : [stages.slice(0, place), stages.slice(place)];
}

/** Noise that a data sheet states as one number, run-out with it, is spread over the whole band of the record. */
function addResidual(samples: Float64Array, stages: readonly Stage[], random: Random): void {
  const rms = Math.hypot(...stages.map((stage) => stage.residual ?? 0));
  if (rms === 0) return;
  for (let index = 0; index < samples.length; index++) samples[index]! += rms * random.normal();
}

/** Seconds of silence behind a record, for what still rings. */
const settlingTail = 2;

function untouched(samples: Float64Array): DrivenOutput {
  return { samples, atTop: 0, atBottom: 0, slewed: 0 };
}

function add(to: Float64Array, what: Float64Array): void {
  if (to.length !== what.length) throw new Broken('what is added has the same length', { to: to.length });
  for (let index = 0; index < to.length; index++) to[index]! += what[index]!;
}
