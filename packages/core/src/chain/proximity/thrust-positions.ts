import { quantityField, si } from '../../quantity/index.ts';
import { api670 } from '../../source/api-670.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';
import { aboveZero } from '../formulas/above-zero.ts';

/** What a thrust probe reads at a position off the middle of the float: with the collar nearer, and with it farther. */
export interface ThrustVoltages {
  readonly toward: number;
  readonly away: number;
}

/**
 * V = V_c ± S·x: the voltage rises toward zero as the collar comes nearer. `centre` in volts, below zero, at the middle
 * of the float; position x in metres from there; scale factor in V/m.
 */
export function thrustVoltages(centre: number, position: number, scaleFactor: number): ThrustVoltages {
  return { toward: centre + scaleFactor * position, away: centre - scaleFactor * position };
}

export const thrustPositionsWorking = working({
  name: 'thrust-positions',
  title: 'Voltages of a thrust probe at a position beyond the float',
  inputs: {
    float: quantityField('length', 'Whole float of the thrust bearing, cold', { symbol: 'F', example: '0.35 mm' }),
    beyond: quantityField('length', 'How far beyond either end of it', { symbol: 'b', example: '0.25 mm' }),
    gapVoltage: quantityField('voltage', 'Voltage with the collar in the middle of its float', {
      symbol: 'V_c',
      example: '-10 V',
    }),
    scaleFactor: quantityField('voltage per displacement', 'Scale factor of the set', {
      symbol: 'S',
      example: '7.87 mV/um',
    }),
  },
  outputs: {
    position: output(quantityField('length', 'From the middle of the float', { symbol: 'x' }), 'x = F/2 + b'),
    toward: output(quantityField('voltage', 'Moving toward the probe', { symbol: 'V_t' }), 'V_t = V_c + S · x'),
    away: output(quantityField('voltage', 'Moving away from the probe', { symbol: 'V_a' }), 'V_a = V_c − S · x'),
  },
  holds:
    'inside the linear range, the gap set with the collar in the middle of a cold float; which way is toward the probe must be stated with the thrust direction.',
  sources: [clause(api670, 'axial position', 'from memory')],
  evaluate: ({ float, beyond, gapVoltage, scaleFactor }) => {
    aboveZero({ float, scaleFactor });
    const position = float / 2 + beyond;
    const { toward, away } = thrustVoltages(gapVoltage, position, scaleFactor);
    return { position: si('length', position), toward: si('voltage', toward), away: si('voltage', away) };
  },
  example: { float: '0.35 mm', beyond: '0.25 mm', 'gap-voltage': '-10 V', 'scale-factor': '7.87 mV/um' },
});
