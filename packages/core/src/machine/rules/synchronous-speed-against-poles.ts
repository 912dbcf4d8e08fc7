import { measured, said } from '../../finding/measure.ts';
import { valueIfStated } from '../../quantity/index.ts';
import { inductionMotorPractice } from '../../source/induction-motor-practice.ts';
import { clause } from '../../source/source.ts';
import type { RoleSpeeds } from '../element.ts';
import { synchronousSpeed } from '../motor-frequencies.ts';
import type { SynchronousMotorSheet } from '../synchronous-motor.ts';
import { oneElement } from './example-trains.ts';
import { machineRule } from './rule.ts';

/** Share by which a stated speed may miss synchronous speed: drift of the mains. Common practice, no source. */
const mainsDrift = 0.005;

const example = (poles: number) =>
  oneElement({ kind: 'synchronous-motor', on: 'fan', poles, supply: 'mains', 'line-frequency': '49.533 Hz' });

export const synchronousSpeedAgainstPoles = machineRule<[SynchronousMotorSheet, RoleSpeeds<'on'>]>({
  id: 'machine/synchronous-speed-against-poles',
  title: 'A synchronous motor on the mains turns at its synchronous speed',
  prose: 'Speed, poles and mains frequency of a synchronous machine leave no room: n = 2·f/p.',
  sources: [clause(inductionMotorPractice, 'synchronous speed')],
  finds(sheet, speeds) {
    const poles = valueIfStated(sheet.values.poles);
    const line = valueIfStated(sheet.values.lineFrequency);
    if (poles === undefined || line === undefined || !speeds.on.known) return [];
    if (valueIfStated(sheet.values.supply) !== 'mains') return [];
    const synchronous = synchronousSpeed(line, poles);
    const { low, high } = speeds.on.value;
    const off = [low, high].find((speed) => Math.abs(speed / synchronous - 1) > mainsDrift);
    if (off === undefined) return [];
    return [
      {
        weight: 'question',
        at: sheet.of,
        found: said`${measured('shaft speed', off)} with ${poles} poles at ${measured('frequency', line)}`,
        limit: said`${measured('shaft speed', synchronous)}, within ${mainsDrift * 100} %`,
        because: 'Twice line frequency is taken as an exact order of this shaft.',
        remedy: ['read poles and speed again', 'state the supply as a converter where one sets the speed'],
        asks: 'Which of poles, mains frequency and speed is right?',
      },
    ];
  },
  valid: example(4),
  invalid: example(6),
});
