import { type Finding, inOrderOfWeight } from '../../finding/finding.ts';
import { aboveNoise } from './above-noise.ts';
import { alertBelowTrip } from './alert-below-trip.ts';
import { delay } from './delay.ts';
import { detectorOfOutput } from './detector-of-output.ts';
import type { AlarmCase, AlarmRule } from './rule.ts';
import { tripShareOfRange } from './trip-share-of-range.ts';
import { withinRange } from './within-range.ts';

export const alarmRules: readonly AlarmRule[] = [
  alertBelowTrip,
  withinRange,
  tripShareOfRange,
  detectorOfOutput,
  aboveNoise,
  delay,
];

/** What is wrong with the set points of a register, gravest first. */
export function orderFindings(subject: AlarmCase): readonly Finding[] {
  return inOrderOfWeight(alarmRules.flatMap((each) => each.findings(subject)));
}
