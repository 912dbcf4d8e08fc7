import { bareNumber, measuredChange, said } from '../../finding/measure.ts';
import { type Answer, showFraction, toNumber, valueIfStated } from '../../quantity/index.ts';
import { planetaryKinematics } from '../../source/planetary-kinematics.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import type { RoleSpeeds } from '../element.ts';
import { type PlanetaryMember, planetaryMembers, ratioWithHeld } from '../planetary-frequencies.ts';
import type { PlanetaryStageSheet } from '../planetary-stage.ts';
import { planetaryTrain } from './example-trains.ts';
import { ratioMismatch } from './ratio-against-teeth.ts';
import { machineRule } from './rule.ts';

export const planetaryRatio = machineRule<[PlanetaryStageSheet, RoleSpeeds<PlanetaryMember>]>({
  id: 'machine/planetary-ratio',
  title: 'A stated ratio of a planetary stage agrees with the member that is held',
  prose:
    'The same wheels give three ratios, one for each member that may be held. A ratio that belongs to another member says that the wrong one was taken as held; the usual mistake is a ring taken as held where the carrier is.',
  sources: [
    clause(planetaryKinematics, 'Willis equation'),
    clause(tradePractice, 'ratio mismatch above 0.5 %: stop and ask'),
  ],
  finds(sheet, speeds) {
    const sun = valueIfStated(sheet.values.sunTeeth);
    const ring = valueIfStated(sheet.values.ringTeeth);
    const stated = valueIfStated(sheet.values.ratio);
    const held = planetaryMembers.find((member) => standsStill(speeds[member]));
    if (sun === undefined || ring === undefined || stated === undefined || held === undefined) return [];
    const larger = stated < 1 ? 1 / stated : Number(stated);
    const mismatch = (member: PlanetaryMember) => toNumber(ratioWithHeld({ sun, ring }, member)) / larger - 1;
    if (Math.abs(mismatch(held)) <= ratioMismatch) return [];
    const instead = planetaryMembers.find((member) => Math.abs(mismatch(member)) <= ratioMismatch);
    const computed = ratioWithHeld({ sun, ring }, held);
    return [
      {
        weight: 'question',
        at: sheet.of,
        found: said`${showFraction(computed)} = ${bareNumber(toNumber(computed), 5)} with the ${held} held, beside a stated ratio of ${bareNumber(stated, 5)}`,
        limit: said`a difference of up to ${ratioMismatch * 100} %, found ${measuredChange(mismatch(held))}`,
        because: 'Every speed behind this stage, and every fault frequency in it, follows from which member is held.',
        remedy:
          instead === undefined
            ? ['count the teeth', 'read the ratio from the plate again']
            : [`state the ${instead} as held: with it the stated ratio is met`],
        asks:
          instead === undefined
            ? 'Which is right, the tooth counts or the ratio?'
            : `Is the ${instead} held, and not the ${held}?`,
      },
    ];
  },
  valid: planetaryTrain({ ratio: 5.714 }),
  invalid: planetaryTrain({ ratio: 4.714 }),
});

function standsStill(speed: Answer<{ readonly low: number; readonly high: number }>): boolean {
  return speed.known && speed.value.low === 0 && speed.value.high === 0;
}
