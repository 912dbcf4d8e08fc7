import { measured, said } from '../../finding/measure.ts';
import { valueIfStated } from '../../quantity/index.ts';
import { inductionMotorPractice } from '../../source/induction-motor-practice.ts';
import { clause } from '../../source/source.ts';
import type { RoleSpeeds } from '../element.ts';
import type { InductionMotorSheet } from '../induction-motor.ts';
import { synchronousSpeed } from '../motor-frequencies.ts';
import { motorTrain } from './example-trains.ts';
import { machineRule } from './rule.ts';

/** Share of synchronous speed by which stated slip and stated speed may differ: rounding of a plate. Common practice, no source. */
const rounding = 0.002;

export const ratedSlipAgainstSpeed = machineRule<[InductionMotorSheet, RoleSpeeds<'on'>]>({
  id: 'machine/rated-slip-against-speed',
  title: 'Rated slip and rated speed of a motor agree',
  prose: 'Where both are stated, synchronous less rated speed is the rated slip.',
  sources: [clause(inductionMotorPractice, 'slip')],
  finds(sheet) {
    const poles = valueIfStated(sheet.values.poles);
    const line = valueIfStated(sheet.values.lineFrequency);
    const slip = valueIfStated(sheet.values.ratedSlip);
    const speed = valueIfStated(sheet.values.ratedSpeed);
    if (poles === undefined || line === undefined || slip === undefined || speed === undefined) return [];
    const synchronous = synchronousSpeed(line, poles);
    const fromSpeed = synchronous - speed;
    if (Math.abs(fromSpeed - slip) <= rounding * synchronous) return [];
    return [
      {
        weight: 'question',
        at: sheet.of,
        found: said`a rated slip of ${measured('shaft speed', slip)} beside a rated speed that gives ${measured('shaft speed', fromSpeed)}`,
        limit: said`both within ${measured('shaft speed', rounding * synchronous)}`,
        because: 'The stated slip is used; the speed then contradicts it.',
        remedy: ['state only the one that was read from the plate'],
        asks: 'Which of the two was read, and from where?',
      },
    ];
  },
  valid: motorTrain({ 'rated-slip': '14 r/min' }),
  invalid: motorTrain({ 'rated-slip': '40 r/min' }),
});
