import { measured, said } from '../../finding/measure.ts';
import { valueIfStated } from '../../quantity/index.ts';
import { inductionMotorPractice } from '../../source/induction-motor-practice.ts';
import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import type { RoleSpeeds } from '../element.ts';
import type { InductionMotorSheet } from '../induction-motor.ts';
import { implausibleSlip, polesForSpeed, synchronousSpeed } from '../motor-frequencies.ts';
import { motorTrain } from './example-trains.ts';
import { machineRule } from './rule.ts';

export const polesAgainstSpeed = machineRule<[InductionMotorSheet, RoleSpeeds<'on'>]>({
  id: 'machine/poles-against-speed',
  title: 'Pole count and speed of an induction motor belong together',
  prose:
    'A loaded induction motor turns a few per cent below synchronous speed. More than 8 % says that poles, line frequency or speed is wrong, and with it pole pass and every electrical line.',
  sources: [clause(inductionMotorPractice), clause(tradePractice, 'slip of motors of plant size')],
  finds(sheet, speeds) {
    const poles = valueIfStated(sheet.values.poles);
    const line = valueIfStated(sheet.values.lineFrequency);
    if (poles === undefined || line === undefined || !(line > 0)) return [];
    const synchronous = synchronousSpeed(line, poles);
    const running = runningOnMains(sheet, speeds);
    const slow = [valueIfStated(sheet.values.ratedSpeed), running, atRatedSlip(sheet, synchronous)].find(
      (speed) => speed !== undefined && speed > 0 && speed < synchronous * (1 - implausibleSlip),
    );
    if (slow === undefined) return [];
    const slip = (synchronous - slow) / synchronous;
    const other = polesForSpeed(line, slow);
    const otherSlip = 1 - slow / synchronousSpeed(line, other);
    const fits = other !== poles && otherSlip < implausibleSlip;
    return [
      {
        weight: 'question',
        at: sheet.of,
        found: said`${measured('shaft speed', slow)} with ${poles} poles at ${measured('frequency', line)} is a slip of ${measured('fraction', slip, 3)}`,
        limit: said`slip up to ${measured('fraction', implausibleSlip, 3)} of ${measured('shaft speed', synchronous)}`,
        because: 'Pole pass, twice line frequency and the resolution that separates them follow from these three.',
        remedy: [
          'read the name plate again',
          ...(fits ? [said`${other} poles would give a slip of ${measured('fraction', otherSlip, 3)}`] : []),
        ],
        asks: fits ? `Has the motor ${other} poles?` : 'Which of poles, line frequency and speed is right?',
      },
    ];
  },
  valid: motorTrain({}),
  invalid: motorTrain({ 'rated-speed': '1290 r/min' }),
});

/** The lowest speed it is run at, where the mains fix its line frequency. */
function runningOnMains(sheet: InductionMotorSheet, speeds: RoleSpeeds<'on'>): number | undefined {
  return valueIfStated(sheet.values.supply) === 'mains' && speeds.on.known ? speeds.on.value.low : undefined;
}

function atRatedSlip(sheet: InductionMotorSheet, synchronous: number): number | undefined {
  const slip = valueIfStated(sheet.values.ratedSlip);
  return slip === undefined ? undefined : synchronous - slip;
}
