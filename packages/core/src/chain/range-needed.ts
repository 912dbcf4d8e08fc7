import type { MeasuringPoint } from '../demand/measuring-point.ts';
import type { Policy } from '../demand/policy.ts';
import { seenBy } from '../demand/target.ts';
import {
  type Answer,
  asMotion,
  asSineDetector,
  fromAll,
  type Motion,
  thenAnswer,
  unanswered,
} from '../quantity/index.ts';
import type { Prediction } from './prediction.ts';
import { worstPeak } from './worst-peak.ts';

/** How far apart the largest and the smallest lie that one record must hold, without changing its range in between. */
export interface RangeNeeded {
  /** Both as peaks in the motion that is sensed. */
  readonly largest: number;
  readonly smallest: number;
  readonly motion: Motion;
  readonly target: string;
  readonly decibels: number;
  /** The same with the margin that the plant asks for to detect. */
  readonly withMargin: number;
}

/**
 * From the worst peak to the smallest burst of a point, in decibels. Bursts only: they are seen in the record itself,
 * while a line gains from the resolution at which it is looked for.
 */
export function rangeNeeded(point: MeasuringPoint, predicted: Prediction, policy: Policy): Answer<RangeNeeded> {
  const [ceiling] = predicted.ceilings;
  const bursts = point.targets.filter((target) => target.observable.scansBand);
  if (ceiling === undefined || bursts.length === 0) {
    return unanswered([{ of: point.of, what: ceiling === undefined ? 'ceiling of the chain' : 'bursts to be seen' }]);
  }
  const worst = worstPeak(
    ceiling,
    seenBy(predicted.chain.transducer.reference, point.targets),
    point.disturbances,
    predicted.features,
  );
  return thenAnswer(worst, ({ peak, ceiling: { motion } }) => {
    const smallest = Object.fromEntries(
      bursts.map((target) => [
        target.name,
        fromAll(
          { level: target.smallest, at: target.largestAt },
          ({ level, at }) => asMotion(asSineDetector(level, 'peak'), motion, at).value,
        ),
      ]),
    );
    return fromAll({ smallest: fromAll(smallest, (each) => each) }, (known) => {
      const [target, least] = Object.entries(known.smallest).sort(([, a], [, b]) => a - b)[0]!;
      const decibels = 20 * Math.log10(peak / least);
      return { largest: peak, smallest: least, motion, target, decibels, withMargin: decibels + policy.detection };
    });
  });
}
