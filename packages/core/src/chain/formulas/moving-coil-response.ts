import { numberField, quantityField, si } from '../../quantity/index.ts';
import { type Complex, magnitude, phase, scaled } from '../../signal/complex.ts';
import { suspension } from '../../signal/filters.ts';
import { seismometryNotes } from '../../source/seismometry-notes.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';
import { aboveZero } from './above-zero.ts';

/**
 * Output of a moving coil over the velocity of its case, 1 well above the suspension frequency: H = −r²/(1 − r² + 2jζr),
 * r = f/f₀. The coil is wired so that the case moving towards positive gives a positive voltage, hence the sign.
 */
export function coilResponse(frequency: number, natural: number, damping: number): Complex {
  return scaled(suspension(frequency, natural, damping), -1);
}

/**
 * What the coil's own current adds to the damping: Δζ = G²/(2·m·ω₀·(R_c + R_s)), with sensitivity G in V/(m/s), moving
 * mass m, ω₀ = 2πf₀, coil and shunt resistance. SI units.
 */
export function shuntDamping(coil: {
  readonly sensitivity: number;
  readonly movingMass: number;
  readonly natural: number;
  readonly coilResistance: number;
  readonly shunt: number;
}): number {
  const { sensitivity: G, movingMass: m, natural, coilResistance, shunt } = coil;
  aboveZero({ movingMass: m, suspension: natural, resistance: coilResistance + shunt });
  return (G * G) / (2 * m * 2 * Math.PI * natural * (coilResistance + shunt));
}

export const movingCoilResponse = working({
  name: 'moving-coil-response',
  title: 'Response of a moving-coil velocity transducer',
  inputs: {
    suspension: quantityField('frequency', 'Natural frequency of the suspension', { symbol: 'f_0', example: '10 Hz' }),
    damping: quantityField('ratio', 'Damping, with its shunt', { symbol: 'ζ', example: '0.7' }),
    frequency: quantityField('frequency', 'Frequency of the motion', { symbol: 'f', example: '15 Hz' }),
  },
  outputs: {
    ratio: output(numberField('Frequency over the natural frequency', { symbol: 'r' }), 'r = f/f_0'),
    magnitude: output(
      numberField('Output over what it is well above the natural frequency, for the same velocity', { symbol: 'H' }),
      'H = r^2/√((1 − r^2)^2 + (2 · ζ · r)^2)',
    ),
    phase: output(
      quantityField('angle', 'Lead of the output over the velocity', { symbol: 'φ' }),
      'φ = atan2(2 · ζ · r, r^2 − 1)',
    ),
  },
  holds:
    'the coil stays clear of its stops and in its position of use; velocity in, open or with the shunt of that damping',
  sources: [clause(seismometryNotes, 'response of the electromagnetic seismometer')],
  evaluate: ({ suspension: natural, damping, frequency }) => {
    aboveZero({ suspension: natural, damping, frequency });
    const H = coilResponse(frequency, natural, damping);
    return { ratio: frequency / natural, magnitude: magnitude(H), phase: si('angle', phase(H)) };
  },
  example: { suspension: '10 Hz', damping: '0.7', frequency: '15 Hz' },
});
