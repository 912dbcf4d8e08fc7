import { bandNoise, type Integrations } from '../../chain/formulas/noise.ts';
import type { Prediction } from '../../chain/prediction.ts';
import {
  type Answer,
  answer,
  asMotion,
  asSineDetector,
  type Band,
  type Detector,
  fromAll,
  type Level,
  level,
  type Motion,
  motionOrder,
  sineFactor,
} from '../../quantity/index.ts';
import { magnitude } from '../../signal/complex.ts';
import { type GrowthCurve, levelOn } from './growth.ts';

/** One frequency of the motion at a point, and how it grows. */
export interface EventPart {
  readonly name: string;
  readonly frequency: number;
  readonly growth: GrowthCurve;
}

/** What grows at a point, and for how long. */
export interface MachineEvent {
  readonly name: string;
  readonly at: string;
  readonly parts: readonly EventPart[];
  readonly days: number;
}

/** What a part makes of the reading: its rms in the motion of the set point, as it is and as the chain shows it. */
export interface PartReading {
  readonly part: EventPart;
  /** Whether the band of the set point holds it. */
  readonly inBand: boolean;
  readonly truth: Level<Motion>;
  readonly indicated: Level<Motion>;
}

/** Reads the parts of an event on a day, in the motion, detector and band of one set point. */
export interface EventReader {
  parts(day: number): readonly PartReading[];
  truth(day: number): Level<Motion>;
  /** As the chain indicates it, its own noise in the band with it. */
  indicated(day: number): Level<Motion>;
}

/** Everything that adds up to one value for a set point, through the predicted response of the chain. */
export function eventReader(
  parts: readonly EventPart[],
  like: Level<Motion>,
  predicted: Prediction,
): Answer<EventReader> {
  const noise = noiseIn(like, predicted);
  return fromAll({ response: predicted.response, noise }, ({ response, noise: floor }) => {
    const read = (day: number): readonly PartReading[] =>
      parts.map((part) => {
        const rms = asSineDetector(levelOn(part.growth, day), 'rms');
        const truth = asMotion(rms, like.quantity, part.frequency);
        const gain = magnitude(response(part.frequency));
        return {
          part,
          inBand: isInBand(part.frequency, like.band),
          truth,
          indicated: { ...truth, value: truth.value * gain },
        };
      });
    const total = (day: number, of: 'truth' | 'indicated', noiseRms: number) =>
      level(
        like.quantity,
        detected(
          read(day)
            .filter((each) => each.inBand)
            .map((each) => each[of].value),
          noiseRms,
          like.detector,
        ),
        like.detector,
        like.band,
      );
    return { parts: read, truth: (day) => total(day, 'truth', 0), indicated: (day) => total(day, 'indicated', floor) };
  });
}

/** Whether a set point with this band counts a frequency; without a band it counts every one. */
export function isInBand(frequency: number, band: Band | undefined): boolean {
  return band === undefined || (frequency >= band.low * (1 - 1e-9) && frequency <= band.high * (1 + 1e-9));
}

/**
 * What a detector makes of sines of unlike frequency and of noise, given as rms: squares add for what is derived from
 * rms; for a true peak the peaks add as if they met, which they do now and then.
 */
function detected(rms: readonly number[], noise: number, detector: Detector): number {
  const squares = Math.hypot(...rms, noise);
  if (detector !== 'peak' && detector !== 'peak-to-peak') return squares * sineFactor[detector];
  const met = rms.reduce((sum, each) => sum + each, 0);
  return Math.hypot(met, noise) * sineFactor[detector];
}

/** Noise of the chain in the band of the set point; none is counted where the set point has no band, or one number is sent. */
function noiseIn(like: Level<Motion>, predicted: Prediction): Answer<number> {
  const { band } = like;
  const { transducer } = predicted.chain;
  if (band === undefined || transducer.signal === 'overall') return answer(0);
  const integrations = motionOrder[transducer.senses] - motionOrder[like.quantity];
  const part = (Math.abs(integrations) === integrations ? integrations : 0) as Integrations;
  return fromAll({ density: predicted.noise }, ({ density }) => bandNoise(density, band.low, band.high, part));
}
