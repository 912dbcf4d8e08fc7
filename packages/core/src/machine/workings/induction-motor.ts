import { countField, optional, quantityField, Refusal, showQuantity, si, stated } from '../../quantity/index.ts';
import { inductionMotorPractice } from '../../source/induction-motor-practice.ts';
import { clause } from '../../source/source.ts';
import { optionalOutput, output, working } from '../../working/index.ts';
import { polePass, slipFrequency, synchronousSpeed } from '../motor-frequencies.ts';
import { polesAgainstSpeed } from '../rules/poles-against-speed.ts';
import { slipAboveZero } from '../rules/slip-above-zero.ts';

const frequency = (meaning: string, symbol: string) => quantityField('frequency', meaning, { symbol });

export const inductionMotorFrequencies = working({
  name: 'induction-motor',
  title: 'Slip and the electrical frequencies of an induction motor',
  inputs: {
    lineFrequency: quantityField('frequency', 'Line frequency', { symbol: 'f_L', example: '60 Hz' }),
    poles: countField('Poles, not pole pairs', { symbol: 'p', least: 2, example: '4' }),
    speed: quantityField('shaft speed', 'Speed of the shaft', { symbol: 'n', example: '1780 r/min' }),
    rotorBars: optional(countField('Bars of the cage rotor', { symbol: 'R', example: '44' })),
  },
  outputs: {
    synchronousSpeed: output(quantityField('shaft speed', 'Synchronous speed', { symbol: 'n_s' }), 'n_s = 2 · f_L / p'),
    slip: output(quantityField('fraction', 'Slip', { symbol: 's' }), 's = (n_s − n) / n_s'),
    slipFrequency: output(frequency('Slip frequency, of the shaft', 'f_s'), 'f_s = n_s − n'),
    polePass: output(frequency('Pole pass', 'F_p'), 'F_p = p · f_s'),
    twiceLine: output(frequency('Twice line frequency', 'f_2L'), 'f_2L = 2 · f_L'),
    rotorBarPass: optionalOutput(
      frequency('Rotor-bar pass; its side lines lie at ± twice line frequency', 'f_b'),
      'f_b = R · n',
    ),
  },
  holds: 'a steady speed below synchronous; above it the machine is a generator and the slip negative',
  sources: [clause(inductionMotorPractice), clause(inductionMotorPractice, 'rotor-bar pass', 'from memory')],
  evaluate: ({ lineFrequency: f, poles: p, speed: n, rotorBars: R }) => {
    if (p % 2 !== 0) throw new Refusal({ read: `poles=${p}`, expected: 'an even number of poles' });
    if (!(f > 0)) {
      throw new Refusal({
        read: `line-frequency=${showQuantity('frequency', f)}`,
        expected: 'a line frequency above zero',
      });
    }
    const synchronous = synchronousSpeed(f, p);
    const slip = slipFrequency(f, p, n);
    return {
      synchronousSpeed: si('shaft speed', synchronous),
      slip: si('fraction', slip / synchronous),
      slipFrequency: si('frequency', slip),
      polePass: si('frequency', polePass(f, p, n)),
      twiceLine: si('frequency', 2 * f),
      rotorBarPass: R === undefined ? undefined : si('frequency', R * n),
    };
  },
  doubts: ({ lineFrequency, poles, speed }) => {
    const sheet = {
      of: 'induction-motor',
      values: {
        poles: stated(poles),
        supply: stated('converter' as const),
        lineFrequency: stated(lineFrequency),
        ratedSpeed: stated(speed),
        carrier: undefined,
        ratedSlip: undefined,
        torqueLaw: undefined,
        rotorBars: undefined,
      },
    };
    const speeds = { on: { known: false, missing: [] } } as const;
    return [...slipAboveZero.check(sheet, speeds), ...polesAgainstSpeed.check(sheet, speeds)];
  },
  example: { 'line-frequency': '60 Hz', poles: '4', speed: '1780 r/min', 'rotor-bars': '44' },
});
