import { type Frequency, quantityField, Refusal, si } from '../../quantity/index.ts';
import { optional } from '../../quantity/stated.ts';
import { iepePractice } from '../../source/iepe-practice.ts';
import { clause } from '../../source/source.ts';
import { optionalOutput, output, working } from '../../working/index.ts';
import { aboveZero } from './above-zero.ts';
import { peakVoltageField } from './peak-voltage.ts';

/**
 * Highest frequency at which a constant-current sensor still drives a sine of the peak voltage V into its cable:
 * f = (I_s − I_e)/(2π·C·V), in hertz; the current the sensor keeps for itself does not charge the cable. Zero where the
 * supply gives no more than the sensor keeps.
 */
export function slewLimit(
  capacitance: number,
  supplyCurrent: number,
  sensorCurrent: number,
  peakVoltage: number,
): Frequency {
  aboveZero({ capacitance, peakVoltage });
  const [C, V] = [capacitance, peakVoltage];
  const I = Math.max(0, supplyCurrent - sensorCurrent);
  return si('frequency', I / (2 * Math.PI * C * V));
}

export const iepeCableDrive = working({
  name: 'iepe-cable-drive',
  title: 'Frequency up to which a constant-current sensor drives its cable',
  inputs: {
    capacitance: optional(
      quantityField('capacitance', 'Capacitance of the whole cable, between its signal cores', {
        symbol: 'C',
        example: '8.5 nF',
      }),
    ),
    capacitancePerLength: optional(
      quantityField('capacitance per length', 'Capacitance of the cable per length', {
        symbol: 'c',
        example: '100 pF/m',
      }),
    ),
    length: optional(quantityField('length', 'Length of the cable as laid', { symbol: 'L', example: '85 m' })),
    supplyCurrent: quantityField('current', 'Constant current of the supply', { symbol: 'I_s', example: '4 mA' }),
    sensorCurrent: quantityField('current', 'Current the sensor keeps for itself, usually 1 mA', {
      symbol: 'I_e',
      example: '1 mA',
    }),
    peakVoltage: peakVoltageField('Signal to be driven, peak', 'V'),
  },
  outputs: {
    totalCapacitance: optionalOutput(
      quantityField('capacitance', 'Capacitance of the whole cable', { symbol: 'C' }),
      'C = c · L',
    ),
    slewLimit: output(
      quantityField('frequency', 'Highest frequency at which the stated signal is still driven', { symbol: 'f' }),
      'f = (I_s − I_e)/(2π · C · V)',
    ),
  },
  holds:
    'sine of the stated peak, cable short against the wavelength, all of its capacitance at the sensor; the small-signal corner of source resistance and cable stands beside it',
  sources: [clause(iepePractice, 'slew limit; 1 mA kept by the electronics')],
  evaluate: ({ capacitance, capacitancePerLength, length, supplyCurrent, sensorCurrent, peakVoltage }) => {
    const ofLength =
      capacitancePerLength === undefined || length === undefined ? undefined : capacitancePerLength * length;
    const partial = (capacitancePerLength === undefined) !== (length === undefined);
    const total = capacitance ?? ofLength;
    if (total === undefined || partial || (capacitance !== undefined && ofLength !== undefined)) {
      throw new Refusal({
        read: `${[capacitance, capacitancePerLength, length].filter((each) => each !== undefined).length} of capacitance, capacitance-per-length, length`,
        expected: "either 'capacitance', or both 'capacitance-per-length' and 'length'",
      });
    }
    if (supplyCurrent <= sensorCurrent) {
      throw new Refusal({
        read: `supply-current=${supplyCurrent} A`,
        expected: `more than the ${sensorCurrent} A that the sensor keeps for itself`,
      });
    }
    return {
      totalCapacitance: ofLength === undefined ? undefined : si('capacitance', ofLength),
      slewLimit: slewLimit(total, supplyCurrent, sensorCurrent, peakVoltage),
    };
  },
  example: {
    'capacitance-per-length': '100 pF/m',
    length: '85 m',
    'supply-current': '4 mA',
    'sensor-current': '1 mA',
    'peak-voltage': '8 V peak',
  },
});
