import {
  type Answer,
  aboveZeroField,
  answerIfStated,
  answerOf,
  ask,
  flagField,
  optional,
  quantityField,
} from '../../quantity/index.ts';
import { iepePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { filterOrderField } from '../filter-order-field.ts';
import type { Feed } from '../transducer/transducer-kind.ts';
import { type InputModel, inputKind } from './input-kind.ts';
import { voltageInputSheet, voltageInputStages } from './voltage-input.ts';

const withoutCurrent: readonly Feed[] = ['self-generating', 'voltage-supply', 'negative-supply'];

/** Transducers that need no constant current only where it can be switched off; left out means that it cannot. */
function taken(canBeOff: Answer<boolean | undefined>): Pick<InputModel, 'takes' | 'perhaps'> {
  if (!canBeOff.known) {
    return { takes: ['constant-current'], perhaps: { takes: withoutCurrent, missing: canBeOff.missing } };
  }
  return { takes: ['constant-current', ...(canBeOff.value === true ? withoutCurrent : [])], perhaps: undefined };
}

/** An input that feeds the transducer a constant current and reads the voltage over it, without its bias. */
export const constantCurrentInput = inputKind({
  kind: 'constant-current-input',
  name: 'Constant-current (IEPE) input',
  dataSheet: {
    ...voltageInputSheet,
    compliance: quantityField('voltage', 'Supply voltage behind the current source', {
      symbol: 'V_c',
      example: '24 V',
    }),
    highestCompliance: optional(
      quantityField('voltage', 'That voltage at the top of its tolerance; a shunt-diode barrier asks for it', {
        example: '25.5 V',
      }),
    ),
    current: quantityField('current', 'Current it feeds', { symbol: 'I', example: '4 mA' }),
    sourceDrop: quantityField('voltage', 'Voltage the current source itself needs', { symbol: 'V_d', example: '1 V' }),
    couplingCorner: aboveZeroField(quantityField('frequency', 'Corner of the coupling, −3 dB', { example: '0.1 Hz' })),
    couplingOrder: filterOrderField('Order of the coupling'),
    currentCanBeOff: optional(flagField('Whether the current can be switched off for self-generating transducers')),
  },
  sources: [clause(iepePractice)],
  model: (sheet) => ({
    of: sheet.of,
    ...taken(answerIfStated(sheet.values.currentCanBeOff, sheet.of, 'current can be off')),
    stages: voltageInputStages(
      sheet,
      ask(sheet, ['couplingCorner', 'couplingOrder'], (s) => ({ frequency: s.couplingCorner, order: s.couplingOrder })),
    ),
    peakVoltage: ask(sheet, ['rangePeak'], (s) => s.rangePeak as number),
    bits: ask(sheet, ['bits'], (s) => s.bits),
    constantCurrent: {
      compliance: ask(sheet, ['compliance'], (s) => s.compliance as number),
      highest: answerOf<number>(sheet.values.highestCompliance, sheet.of, 'highest compliance'),
      current: ask(sheet, ['current'], (s) => s.current as number),
      drop: ask(sheet, ['sourceDrop'], (s) => s.sourceDrop as number),
    },
    loopCard: undefined,
    samplingTo: ask(sheet, ['samplingTo'], (s) => s.samplingTo as number),
  }),
});
