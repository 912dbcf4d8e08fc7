import { quantityField, si } from '../../quantity/index.ts';
import { api670 } from '../../source/api-670.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';
import { aboveZero } from '../formulas/above-zero.ts';

/**
 * How much more gap a probe sees of a shaft at rest on the bottom of its bearing than of one in the middle: the radial
 * clearance along the axis of the probe, (c/2)·cos θ, with the diametral clearance c in metres and the angle θ of the
 * probe from the top in radians. Geometry.
 */
export function gapShift(clearance: number, fromTop: number): number {
  return (clearance / 2) * Math.cos(fromTop);
}

export const gapShiftWorking = working({
  name: 'gap-shift',
  title: 'Gap of a probe from a shaft at rest to a shaft in the middle',
  inputs: {
    clearance: quantityField('length', 'Diametral clearance of the bearing', { symbol: 'c', example: '165 um' }),
    fromTop: quantityField('angle', 'Angle of the probe from the top of the bearing', {
      symbol: 'θ',
      example: '45 deg',
    }),
    scaleFactor: quantityField('voltage per displacement', 'Scale factor of the set', {
      symbol: 'S',
      example: '7.87 mV/um',
    }),
    gapVoltage: quantityField('voltage', 'Voltage at which the gap is set, the shaft at rest', {
      symbol: 'V_r',
      example: '-10 V',
    }),
  },
  outputs: {
    shift: output(
      quantityField('length', 'Gap that goes as the shaft rises to the middle', { symbol: 'd' }),
      'd = (c/2) · cos θ',
    ),
    voltageShift: output(quantityField('voltage', 'Change of the voltage', { symbol: 'V_d' }), 'V_d = S · d'),
    centred: output(quantityField('voltage', 'Voltage of a shaft in the middle', { symbol: 'V_c' }), 'V_c = V_r + V_d'),
  },
  holds:
    'a shaft that rests on the bottom of its bearing and a round bearing; in tilting pads it rests a little lower or higher. A running shaft lies off the middle: the true place follows from both probes.',
  sources: [clause(api670, 'gap voltage and position of the shaft', 'from memory')],
  evaluate: ({ clearance, fromTop, scaleFactor, gapVoltage }) => {
    aboveZero({ clearance, scaleFactor });
    const shift = gapShift(clearance, fromTop);
    return {
      shift: si('length', shift),
      voltageShift: si('voltage', scaleFactor * shift),
      centred: si('voltage', gapVoltage + scaleFactor * shift),
    };
  },
  example: { clearance: '165 um', 'from-top': '45 deg', 'scale-factor': '7.87 mV/um', 'gap-voltage': '-10 V' },
});
