import {
  type Answer,
  asMotion,
  asSineDetector,
  type Band,
  type DesignedPoint,
  type Judgement,
  type Level,
  level,
  lineNoise,
  type Motion,
  motions,
  type Prediction,
  sees,
  showQuantity,
  type Target,
  visibility,
} from '@soundpost/core';
import { type Ends, roundDown, roundUp } from '../drawing/axis.ts';

/** What of a point the amplitude chart shows. */
export type ChartedPoint = Pick<DesignedPoint, 'point' | 'appraisal' | 'boundaries'>;

/** A target as it stands on the amplitude chart: between what must be seen and what must be survived. */
export interface TargetMark {
  /** As in the table of the targets. */
  readonly number: number;
  readonly target: Target;
  readonly band: Band;
  readonly smallest: Level<Motion> | undefined;
  readonly largest: Level<Motion> | undefined;
  /** Noise where it is compared with this target, in the detector it is compared in. */
  readonly noise: Level<Motion> | undefined;
  /** By how many decibels the smallest level stands over that noise, as the rules found it. */
  readonly over: number | undefined;
}

/** A curve of velocity over frequency, of a sine as rms; undefined where it has no value. */
export interface VelocityCurve {
  readonly name: string;
  at(frequency: number): number | undefined;
}

export interface AmplitudeContent {
  readonly marks: readonly TargetMark[];
  /** Targets without a place on the chart, and why. */
  readonly notDrawn: readonly { readonly name: string; readonly why: string }[];
  readonly frequencies: Ends;
  readonly floor: VelocityCurve | undefined;
  readonly ceilings: readonly VelocityCurve[];
  readonly features: readonly number[];
}

/** The velocity, as rms, of a sine of this level at a frequency: what gives a level its place on the chart. */
export function velocityOf(shown: Level<Motion>, frequency: number): number {
  return asMotion(asSineDetector(shown, 'rms'), 'velocity', frequency).value;
}

/** The lowest of all ceilings at a frequency. */
export function lowestCeiling(ceilings: readonly VelocityCurve[], frequency: number): number | undefined {
  let lowest: number | undefined;
  for (const each of ceilings) {
    const value = each.at(frequency);
    if (value !== undefined) lowest = lowest === undefined ? value : Math.min(lowest, value);
  }
  return lowest;
}

/** The same curve, which works a frequency out once: the curve, its labels and the ends of the axes ask for the same. */
function remembering({ name, at }: VelocityCurve): VelocityCurve {
  const known = new Map<number, number | undefined>();
  return {
    name,
    at: (frequency) => {
      const before = known.get(frequency);
      if (before !== undefined || known.has(frequency)) return before;
      const value = at(frequency);
      known.set(frequency, value);
      return value;
    },
  };
}

export function isLine(target: Target): boolean {
  return target.observable.kind === 'line';
}

/** The frequencies at which a mark begins and ends; one for a line. A band from zero begins far below its end. */
export function edges({ band, target }: TargetMark): readonly number[] {
  if (isLine(target)) return [band.low];
  return [Math.max(band.low, band.high / 1e6), band.high];
}

export function amplitudeContent({ point, appraisal }: Omit<ChartedPoint, 'boundaries'>): AmplitudeContent {
  const notDrawn: { name: string; why: string }[] = [];
  const marks: TargetMark[] = [];
  for (const [index, target] of point.targets.entries()) {
    const why = reasonNotToDraw(target);
    if (why !== undefined) notDrawn.push({ name: target.name, why });
    else marks.push(markOf(target, index + 1, appraisal?.prediction, appraisal?.judgements ?? []));
  }
  const features = appraisal?.prediction.features ?? [];
  const floor = appraisal === undefined ? undefined : floorOf(point.targets, appraisal.prediction);
  const ceilings = appraisal === undefined ? [] : ceilingsOf(appraisal.prediction, appraisal.judgements, marks);
  return {
    marks,
    notDrawn,
    frequencies: frequencyEnds(marks, features),
    floor: floor && remembering(floor),
    ceilings: ceilings.map(remembering),
    features,
  };
}

function reasonNotToDraw(target: Target): string | undefined {
  if (target.observable.atRest) return 'a position at rest has no frequency';
  if (!target.band.known) return 'its frequency is not known';
  if (!(target.band.value.high > 0)) return 'its frequency is zero';
  if (!target.smallest.known && !target.largest.known) return 'neither its smallest nor its largest level is known';
  return undefined;
}

function markOf(
  target: Target,
  number: number,
  prediction: Prediction | undefined,
  judgements: readonly Judgement[],
): TargetMark {
  const known = <T>(answer: Answer<T>): T | undefined => (answer.known ? answer.value : undefined);
  const under = prediction === undefined ? undefined : noiseUnder(target, prediction, judgements);
  return {
    number,
    target,
    band: known(target.band)!,
    smallest: known(target.smallest),
    largest: known(target.largest),
    noise: under?.noise,
    over: under?.over,
  };
}

interface NoiseUnder {
  readonly noise: Level<Motion>;
  readonly over: number | undefined;
}

/** The noise a target stands over, told in the detector of the comparison; of a sensor of one number, its zero error. */
function noiseUnder(target: Target, prediction: Prediction, judgements: readonly Judgement[]): NoiseUnder | undefined {
  const { oneNumber, reference, signal } = prediction.chain.transducer;
  if (!sees(reference, target.reference)) return undefined;
  if (oneNumber !== undefined) {
    const { range, zeroError } = oneNumber;
    if (!target.observable.isOneNumber || !range.known || !zeroError.known) return undefined;
    const { quantity, value, detector } = range.value;
    const judged = judgements.find((each) => each.rule === 'chain/zero-error' && each.target === target.name);
    return { noise: level(quantity, value * zeroError.value, detector), over: judged?.margin };
  }
  const seen = signal === 'dynamic' ? visibility(target, prediction) : undefined;
  if (seen?.known !== true) return undefined;
  const { noise, signal: told, decibels } = seen.value;
  return { noise: level(noise.quantity, noise.value, told.detector), over: decibels };
}

/** Resonances far above every target would only press the chart together. */
const farthestFeature = 6;

function frequencyEnds(marks: readonly TargetMark[], features: readonly number[]): Ends {
  const all = marks.flatMap(({ band }) => [band.low, band.high]).filter((each) => each > 0);
  if (all.length === 0) return { low: 1, high: 10_000 };
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const near = features.filter((each) => each < high * farthestFeature);
  return { low: roundDown(low * 0.7), high: roundUp(Math.max(high, ...near) * 1.3) };
}

/** The noise in one line of the spacing at which most lines are looked for. */
function floorOf(targets: readonly Target[], prediction: Prediction): VelocityCurve | undefined {
  const spacing = commonest(targets.flatMap(({ resolution }) => (resolution.known ? [resolution.value] : [])));
  const { noise, residual } = prediction;
  if (spacing === undefined || !noise.known || !residual.known) return undefined;
  if (prediction.chain.transducer.signal !== 'dynamic') return undefined;
  const sensed = prediction.chain.transducer.senses;
  return {
    name: `noise floor in lines of ${showQuantity('frequency', spacing)}`,
    at: (frequency) => {
      // What counts in full in any line is added to the noise of the line, as the rule of the noise does.
      const rms = Math.hypot(lineNoise(noise.value(frequency), spacing), residual.value(frequency));
      return rms > 0 ? velocityOf(level(sensed, rms, 'rms'), frequency) : undefined;
    },
  };
}

function commonest(values: readonly number[]): number | undefined {
  const times = (value: number) => values.filter((each) => each === value).length;
  return [...values].sort((a, b) => times(b) - times(a) || a - b)[0];
}

function ceilingsOf(
  prediction: Prediction,
  judgements: readonly Judgement[],
  marks: readonly TargetMark[],
): readonly VelocityCurve[] {
  const ofChain = prediction.ceilings.flatMap((ceiling): readonly VelocityCurve[] => {
    if (!ceiling.known) return [];
    const { name, motion, peak, gain } = ceiling.value;
    return [
      {
        name,
        at: (frequency) => {
          const passed = gain(frequency);
          return passed > 0 && peak > 0 ? velocityOf(level(motion, peak / passed, 'peak'), frequency) : undefined;
        },
      },
    ];
  });
  return [...ofChain, ...rangeEnds(judgements, marks)];
}

/** Where a loop stops telling a value, over the band of the target it was judged for. */
function rangeEnds(judgements: readonly Judgement[], marks: readonly TargetMark[]): readonly VelocityCurve[] {
  return judgements.flatMap((judgement): readonly VelocityCurve[] => {
    if (judgement.rule !== 'chain/loop-range' || judgement.limit.is !== 'level') return [];
    const { level: limit } = judgement.limit;
    const mark = marks.find((each) => each.target.name === judgement.target);
    if (mark === undefined || !isMotion(limit)) return [];
    const { low, high } = mark.band;
    return [
      {
        name: 'end of the loop range',
        at: (frequency) => (frequency >= low && frequency <= high ? velocityOf(limit, frequency) : undefined),
      },
    ];
  });
}

function isMotion(shown: Level): shown is Level<Motion> {
  return (motions as readonly string[]).includes(shown.quantity);
}
