import type { Disturbance, Target } from '../demand/target.ts';
import {
  type Answer,
  answer,
  asMotion,
  asSineDetector,
  type Band,
  fromAll,
  thenAnswer,
  unanswered,
} from '../quantity/index.ts';
import { scan } from './response.ts';
import type { Ceiling } from './transducer/transducer-kind.ts';

/** One share of the worst peak that reaches a ceiling. */
export interface PeakShare {
  readonly name: string;
  readonly peak: number;
}

export interface WorstPeak {
  readonly ceiling: Ceiling;
  readonly peak: number;
  readonly shares: readonly PeakShare[];
  /** Ceiling over worst peak; without bound where nothing is to be survived. */
  readonly headroomDecibels: number;
}

/**
 * The largest peaks of all targets and disturbances, each carried to the place of the ceiling, added as if they met in
 * phase. A burst or a disturbance with a band is lifted by the rms of the gain over its band, equal energy per octave.
 */
export function worstPeak(
  ceiling: Answer<Ceiling>,
  targets: readonly Target[],
  disturbances: readonly Disturbance[],
  features: readonly number[],
): Answer<WorstPeak> {
  return thenAnswer(ceiling, (limit) => {
    const counted = targets.filter((target) => target.within === undefined && !target.observable.atRest);
    const shares: Answer<PeakShare>[] = [
      ...counted.map((target) => targetShare(target, limit, features)),
      ...disturbances.map((disturbance) => disturbanceShare(disturbance, limit, features)),
    ];
    const all = fromAll(Object.fromEntries(shares.map((share, index) => [index, share])), (values) =>
      Object.values(values),
    );
    return fromAll({ all }, ({ all: known }) => {
      const peak = known.reduce((total, share) => total + share.peak, 0);
      const headroomDecibels = peak === 0 ? Number.POSITIVE_INFINITY : 20 * Math.log10(limit.peak / peak);
      return { ceiling: limit, peak, shares: known, headroomDecibels };
    });
  });
}

function targetShare(target: Target, ceiling: Ceiling, features: readonly number[]): Answer<PeakShare> {
  return fromAll({ largest: target.largest, at: target.largestAt, band: target.band }, ({ largest, at, band }) => {
    const peak = asMotion(asSineDetector(largest, 'peak'), ceiling.motion, at).value;
    const gain = target.observable.scansBand ? rmsGain(ceiling, band, features) : ceiling.gain(at);
    return { name: target.name, peak: peak * gain };
  });
}

function disturbanceShare(disturbance: Disturbance, ceiling: Ceiling, features: readonly number[]): Answer<PeakShare> {
  if (!disturbance.level.known) return disturbance.level;
  if (disturbance.bandMissing !== undefined) return unanswered(disturbance.bandMissing);
  const peak = asSineDetector(disturbance.level.value, 'peak');
  if (disturbance.band === undefined) {
    // An impact of no stated duration has no frequency: it counts against a ceiling of its own motion only.
    return answer({ name: disturbance.name, peak: peak.quantity === ceiling.motion ? peak.value : 0 });
  }
  const middle = Math.sqrt(disturbance.band.low * disturbance.band.high);
  const moved = asMotion(peak, ceiling.motion, middle).value;
  return answer({ name: disturbance.name, peak: moved * rmsGain(ceiling, disturbance.band, features) });
}

/** Root mean square of a gain over a band on a logarithmic scale of frequency; of a band without width, the gain there. */
function rmsGain(ceiling: Ceiling, band: Band, features: readonly number[]): number {
  if (band.high === band.low) return ceiling.gain(band.low);
  const points = scan(band, features);
  let area = 0;
  for (let index = 1; index < points.length; index++) {
    const [left, right] = [points[index - 1]!, points[index]!];
    area += ((ceiling.gain(left) ** 2 + ceiling.gain(right) ** 2) / 2) * Math.log(right / left);
  }
  return Math.sqrt(area / Math.log(band.high / band.low));
}
