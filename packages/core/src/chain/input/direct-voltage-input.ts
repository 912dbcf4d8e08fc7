import { aboveZeroField, answerOf, ask, optional, spanField } from '../../quantity/index.ts';
import { tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { inputKind } from './input-kind.ts';
import { directCoupled, voltageInputSheet, voltageInputStages } from './voltage-input.ts';

/** An input that passes the constant part too: for positions and for proximity systems. */
export const directVoltageInput = inputKind({
  kind: 'direct-voltage-input',
  name: 'Direct-coupled voltage input',
  dataSheet: {
    ...voltageInputSheet,
    supplyVoltage: optional(
      aboveZeroField(
        spanField(
          'voltage',
          'Lowest to highest voltage it feeds a driver or sensor with; its sign follows the sensor',
          {
            symbol: 'V_s',
            example: '22.8..25.2 V',
          },
        ),
      ),
    ),
  },
  sources: [clause(tradePractice)],
  model: (sheet) => ({
    of: sheet.of,
    takes: ['negative-supply', 'voltage-supply', 'self-generating'] as const,
    perhaps: undefined,
    stages: voltageInputStages(sheet, directCoupled),
    peakVoltage: ask(sheet, ['rangePeak'], (s) => s.rangePeak as number),
    bits: ask(sheet, ['bits'], (s) => s.bits),
    constantCurrent: undefined,
    loopCard: undefined,
    supplyVoltage: answerOf(sheet.values.supplyVoltage, sheet.of, 'supply voltage'),
    samplingTo: ask(sheet, ['samplingTo'], (s) => s.samplingTo as number),
  }),
});
