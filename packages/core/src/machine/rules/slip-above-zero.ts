import { measured, type Said, said } from '../../finding/measure.ts';
import type { Found } from '../../finding/rule-text.ts';
import { valueIfStated } from '../../quantity/index.ts';
import { inductionMotorPractice } from '../../source/induction-motor-practice.ts';
import { clause } from '../../source/source.ts';
import type { RoleSpeeds } from '../element.ts';
import type { InductionMotorSheet } from '../induction-motor.ts';
import { synchronousSpeed } from '../motor-frequencies.ts';
import { motorTrain } from './example-trains.ts';
import { machineRule } from './rule.ts';

export const slipAboveZero = machineRule<[InductionMotorSheet, RoleSpeeds<'on'>]>({
  id: 'machine/slip-above-zero',
  title: 'An induction motor under load turns below synchronous speed',
  prose:
    'Without slip there is no current in the rotor and no torque. A speed at or above synchronous belongs to a generator, to a synchronous machine, or to another pole count or line frequency.',
  sources: [clause(inductionMotorPractice, 'slip')],
  finds(sheet, speeds) {
    const poles = valueIfStated(sheet.values.poles);
    const line = valueIfStated(sheet.values.lineFrequency);
    const stated = valueIfStated(sheet.values.ratedSlip);
    if (stated !== undefined && stated <= 0)
      return about(sheet.of, said`a rated slip of ${measured('shaft speed', stated)}`);
    if (poles === undefined || line === undefined) return [];
    const synchronous = synchronousSpeed(line, poles);
    const onMains =
      valueIfStated(sheet.values.supply) === 'mains' && speeds.on.known ? speeds.on.value.high : undefined;
    const fast = [valueIfStated(sheet.values.ratedSpeed), onMains].find(
      (speed) => speed !== undefined && speed >= synchronous * (1 - 1e-9),
    );
    if (fast === undefined) return [];
    return about(
      sheet.of,
      said`${measured('shaft speed', fast)} with ${poles} poles at ${measured('frequency', line)}, synchronous speed ${measured('shaft speed', synchronous)}`,
    );
  },
  valid: motorTrain({}),
  invalid: motorTrain({ 'rated-speed': '1510 r/min' }),
});

function about(at: string, found: Said): readonly Found[] {
  return [
    {
      weight: 'question',
      at,
      found,
      limit: 'a slip above zero',
      because:
        'Pole pass and the side lines of broken bars are multiples of the slip; none of them exists at this speed.',
      remedy: ['read poles, line frequency and speed from the name plate again', 'enter a synchronous machine as such'],
      asks: 'Is it a generator, a synchronous machine, or a misread plate?',
    },
  ];
}
