import { type Finding, inOrderOfWeight } from '../../finding/finding.ts';
import { aboveNoise } from './above-noise.ts';
import { alertBelowTrip } from './alert-below-trip.ts';
import { atStart } from './at-start.ts';
import { delay } from './delay.ts';
import { delayNotLong } from './delay-not-long.ts';
import { detectorOfOutput } from './detector-of-output.ts';
import { faultIsNoTrip } from './fault-is-no-trip.ts';
import { ownBaseline } from './own-baseline.ts';
import { resets } from './resets.ts';
import { responseTimeRule } from './response-time.ts';
import type { AlarmCase, AlarmRule } from './rule.ts';
import { tripShareOfRange } from './trip-share-of-range.ts';
import { voteStated } from './vote-stated.ts';
import { withinRange } from './within-range.ts';

export const alarmRules: readonly AlarmRule[] = [
  alertBelowTrip,
  withinRange,
  tripShareOfRange,
  detectorOfOutput,
  aboveNoise,
  delay,
  delayNotLong,
  ownBaseline,
  voteStated,
  faultIsNoTrip,
  atStart,
  resets,
  responseTimeRule,
];

/** What is wrong with the set points of a register, gravest first. */
export function orderFindings(subject: AlarmCase): readonly Finding[] {
  return inOrderOfWeight(alarmRules.flatMap((each) => each.findings(subject)));
}
