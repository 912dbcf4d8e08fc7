import {
  choiceField,
  countField,
  type Level,
  level,
  levelField,
  optional,
  quantityField,
  Refusal,
  showQuantity,
  si,
} from '../../quantity/index.ts';
import { reciprocatingPractice } from '../../source/reciprocating-practice.ts';
import { clause } from '../../source/source.ts';
import { optionalOutput, output, working } from '../../working/index.ts';
import { actings, facesOf, reversalsPerTurn } from '../reciprocating-machine.ts';
import { pistonInertia } from '../slider-crank.ts';

const frequency = (meaning: string, symbol: string) => quantityField('frequency', meaning, { symbol });
const inertia = (meaning: string, symbol: string) =>
  levelField(['acceleration'], meaning, { symbol, example: '380 m/s2 peak' });

export const reciprocatingOrders = working({
  name: 'reciprocating-orders',
  title: 'Orders of a reciprocating machine: inertia, reversals of rod load, gas pulses',
  inputs: {
    speed: quantityField('shaft speed', 'Speed of the crankshaft', { symbol: 'n', example: '500 r/min' }),
    throws: countField('Throws', { symbol: 'z', example: '4' }),
    acting: choiceField(actings, 'Whether one face of each piston works or both', { example: 'double' }),
    stroke: optional(quantityField('length', 'Stroke', { symbol: 's', example: '280 mm' })),
    rodLength: optional(quantityField('length', 'Length of the connecting rod', { symbol: 'l', example: '700 mm' })),
  },
  outputs: {
    once: output(frequency('Once per turn: primary inertia', 'f_1'), 'f_1 = n'),
    rodLoadReversal: output(
      frequency('Reversals of rod load of one throw; secondary inertia lies here too', 'f_2'),
      'f_2 = 2 · n',
    ),
    crossheadImpacts: output(frequency('Reversals of all throws, evenly spread', 'f_i'), 'f_i = 2 · z · n'),
    pulsation: output(
      frequency('Delivery of all working faces, evenly spread', 'f_g'),
      'f_g = z · n · faces, 2 faces where double-acting',
    ),
    primaryInertia: optionalOutput(
      inertia('Acceleration of a piston at once per turn', 'a_1'),
      'a_1 = s/2 · (2π · n)^2',
    ),
    secondaryInertia: optionalOutput(
      inertia('Acceleration of a piston at twice per turn, first term in s/(2l)', 'a_2'),
      'a_2 = a_1 · s / (2 · l)',
    ),
  },
  holds:
    'a slider crank; impacts and pulses fall together or spread by the angles of the throws, so their orders are those of even spreading. The rod load reverses twice per turn unless gas load keeps one sign, which must be checked for the lubrication of the pin.',
  sources: [clause(reciprocatingPractice)],
  evaluate: ({ speed, throws: z, acting, stroke: s, rodLength: l }) => {
    const n = Math.abs(speed);
    for (const [name, length] of [
      ['stroke', s],
      ['rod-length', l],
    ] as const) {
      if (length === undefined || length > 0) continue;
      throw new Refusal({ read: `${name}=${showQuantity('length', length)}`, expected: 'a length above zero' });
    }
    if (s !== undefined && l !== undefined && l <= s / 2) {
      throw new Refusal({
        read: `rod-length=${showQuantity('length', l)}`,
        expected: `a rod longer than the crank, ${showQuantity('length', s / 2)}`,
      });
    }
    const moved = s === undefined ? undefined : pistonInertia(s / 2, l ?? Number.POSITIVE_INFINITY, n);
    const peak = (value: number): Level<'acceleration'> => level('acceleration', value, 'peak');
    return {
      once: si('frequency', n),
      rodLoadReversal: si('frequency', reversalsPerTurn * n),
      crossheadImpacts: si('frequency', reversalsPerTurn * z * n),
      pulsation: si('frequency', z * n * facesOf(acting)),
      primaryInertia: moved && peak(moved.primary),
      secondaryInertia: moved && l !== undefined ? peak(moved.secondary) : undefined,
    };
  },
  example: { speed: '500 r/min', throws: '4', acting: 'double', stroke: '280 mm', 'rod-length': '700 mm' },
});
