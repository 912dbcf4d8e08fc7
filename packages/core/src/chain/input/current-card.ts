import {
  answer,
  answerOf,
  ask,
  countField,
  notBelowZeroField,
  optional,
  quantityField,
  textField,
} from '../../quantity/index.ts';
import { oneComplex } from '../../signal/complex.ts';
import { loopPractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { isolatedGain } from '../two-port.ts';
import { inputKind } from './input-kind.ts';

/** A controller card that reads a current loop as counts, linear between two stated points. */
export const currentCard = inputKind({
  kind: 'current-card',
  name: 'Current-loop input card',
  dataSheet: {
    resistance: quantityField('resistance', 'Resistance it puts in the loop', { symbol: 'R_card', example: '250 ohm' }),
    currentAtLow: quantityField('current', 'Current of the lower stated count', { example: '4 mA' }),
    currentAtHigh: quantityField('current', 'Current of the upper stated count', { example: '20 mA' }),
    countsAtLow: countField('Counts at the lower stated current', { least: 0, example: '0' }),
    countsAtHigh: countField('Counts at the upper stated current', { example: '32000' }),
    accuracy: optional(
      notBelowZeroField(
        quantityField('fraction', 'Accuracy of its reading, of the span between the stated currents, half-width', {
          example: '0.1 %',
        }),
      ),
    ),
    remark: optional(textField('What else a reader should know')),
  },
  sources: [clause(loopPractice)],
  model: (sheet) => ({
    of: sheet.of,
    takes: ['current-loop'] as const,
    perhaps: undefined,
    stages: answer([
      {
        name: 'card',
        part: sheet.of,
        enters: 'current' as const,
        leaves: 'code' as const,
        through: () => isolatedGain(oneComplex),
      },
    ]),
    peakVoltage: undefined,
    constantCurrent: undefined,
    loopCard: {
      resistance: ask(sheet, ['resistance'], (s) => s.resistance as number),
      currentAtLow: ask(sheet, ['currentAtLow'], (s) => s.currentAtLow as number),
      currentAtHigh: ask(sheet, ['currentAtHigh'], (s) => s.currentAtHigh as number),
      countsAtLow: ask(sheet, ['countsAtLow'], (s) => s.countsAtLow),
      countsAtHigh: ask(sheet, ['countsAtHigh'], (s) => s.countsAtHigh),
    },
    cardAccuracy: answerOf<number>(sheet.values.accuracy, sheet.of, 'accuracy'),
    samplingTo: undefined,
  }),
});
