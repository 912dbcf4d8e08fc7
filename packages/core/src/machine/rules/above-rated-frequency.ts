import { measured, said } from '../../finding/measure.ts';
import { inductionMotorPractice } from '../../source/induction-motor-practice.ts';
import { clause } from '../../source/source.ts';
import { kindOf } from '../kinds.ts';
import { operatingRange } from '../state.ts';
import { motorTrain } from './example-trains.ts';
import { trainRule } from './train-rule.ts';

export const aboveRatedFrequency = trainRule({
  id: 'machine/above-rated-frequency',
  title: 'The slip law of a motor holds up to its rated line frequency',
  prose:
    'Above rated frequency a converter can raise the voltage no further: flux falls, and slip grows faster than torque. Pole pass there is a lower bound.',
  sources: [clause(inductionMotorPractice, 'constant flux up to rated frequency', 'from memory')],
  finds: ({ train }) => {
    const { operation } = train;
    const range = operatingRange(train);
    if (operation.by !== 'line' || !range.known) return [];
    const motor = train.elements.find((element) => element.name === operation.motor)!;
    if (kindOf(motor).drive?.slip === undefined || !('lineFrequency' in motor.sheet.values)) return [];
    const rated = motor.sheet.values.lineFrequency;
    if (!rated.known || range.value.high <= rated.value * (1 + 1e-9)) return [];
    return [
      {
        weight: 'warns',
        at: motor.sheet.of,
        found: said`run up to ${measured('frequency', range.value.high)}`,
        limit: said`rated line frequency ${measured('frequency', rated.value)}`,
        because: 'Slip and pole pass above rated frequency are larger than the law used here gives.',
        remedy: ['state the speed measured at the highest line frequency as an operating state by shaft'],
      },
    ];
  },
  valid: motorTrain({}),
  invalid: { ...motorTrain({}), operation: { motor: 'motor', frequency: '25..60 Hz' } },
});
