import { quantityField, si } from '../../quantity/index.ts';
import { api670 } from '../../source/api-670.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';
import { aboveZero } from '../formulas/above-zero.ts';
import { slewLimit } from '../formulas/iepe-cable-drive.ts';
import { peakVoltageField } from '../formulas/peak-voltage.ts';

/** Corner of a source resistance on the capacitance of its cable, 1/(2π·R·C), in hertz. */
export function cableCorner(resistance: number, capacitance: number): number {
  return 1 / (2 * Math.PI * resistance * capacitance);
}

export const driverCableWorking = working({
  name: 'driver-cable',
  title: 'Field cable on a voltage output',
  inputs: {
    outputResistance: quantityField('resistance', 'Output resistance of the driver', {
      symbol: 'R',
      example: '50 ohm',
    }),
    capacitancePerLength: quantityField('capacitance per length', 'Capacitance of the cable per length', {
      symbol: 'c',
      example: '100 pF/m',
    }),
    length: quantityField('length', 'Length of the cable as laid', { symbol: 'L', example: '210 m' }),
    current: quantityField('current', 'Most current the driver gives to its cable', { symbol: 'I', example: '5 mA' }),
    peakVoltage: peakVoltageField('Signal to be driven, peak', 'V'),
  },
  outputs: {
    capacitance: output(quantityField('capacitance', 'Of the whole cable', { symbol: 'C' }), 'C = c · L'),
    corner: output(
      quantityField('frequency', 'Where a small signal has fallen by 3 dB', { symbol: 'f_c' }),
      'f_c = 1/(2π · R · C)',
    ),
    slewLimit: output(
      quantityField('frequency', 'Highest frequency at which the stated signal is still driven', { symbol: 'f_s' }),
      'f_s = I/(2π · C · V)',
    ),
  },
  holds: 'a sine about the gap voltage, cable short against the wavelength, all of its capacitance at the driver',
  sources: [clause(api670, 'output of the oscillator-demodulator', 'from memory')],
  evaluate: ({ outputResistance, capacitancePerLength, length, current, peakVoltage }) => {
    aboveZero({ outputResistance, capacitancePerLength, length, current });
    const capacitance = capacitancePerLength * length;
    return {
      capacitance: si('capacitance', capacitance),
      corner: si('frequency', cableCorner(outputResistance, capacitance)),
      slewLimit: slewLimit(capacitance, current, 0, peakVoltage),
    };
  },
  example: {
    'output-resistance': '50 ohm',
    'capacitance-per-length': '100 pF/m',
    length: '210 m',
    current: '5 mA',
    'peak-voltage': '0.98 V peak',
  },
});
