import {
  type Answer,
  answer,
  choiceField,
  type Fields,
  optional,
  quantityField,
  type Sheet,
  thenAnswer,
  unanswered,
} from '../quantity/index.ts';
import { inductionMotorPractice } from '../source/induction-motor-practice.ts';
import { clause } from '../source/source.ts';
import { tradePractice } from '../source/trade-practice.ts';
import type { ElementLine } from './element.ts';
import { present } from './element.ts';
import { constant, counted, lineFrequencyOf, measuredTimes } from './form.ts';

/** Fields every motor has, whatever its rotor. */
export const motorSupplySheet = {
  supply: choiceField(['mains', 'converter'], 'What sets the line frequency'),
  lineFrequency: quantityField('frequency', 'Line frequency on the name plate', { symbol: 'f_L', example: '50 Hz' }),
  carrier: optional(quantityField('frequency', 'Carrier frequency of the converter', { example: '4 kHz' })),
} as const satisfies Fields;

/** What this file asks of the sheet of a motor. */
export type MotorSupply = Sheet<typeof motorSupplySheet>;

/** The line frequency where mains set it; undefined where a converter does. */
export function mainsFrequency(sheet: MotorSupply): Answer<number | undefined> {
  const { supply, lineFrequency } = sheet.values;
  if (!supply.known) return unanswered([{ of: sheet.of, what: 'supply' }]);
  if (supply.value === 'converter') return answer(undefined);
  return lineFrequency.known ? answer(lineFrequency.value) : unanswered([{ of: sheet.of, what: 'line frequency' }]);
}

/** Pole pairs from an even pole count. */
export function pairsOf(poles: Answer<number>, of: string): Answer<number> {
  return thenAnswer(poles, (count) =>
    count % 2 === 0 ? answer(count / 2) : unanswered([{ of, what: 'an even number of poles' }]),
  );
}

/** Twice line frequency, and the converter carrier with its side lines where there is one. */
export function supplyLines(sheet: MotorSupply, motor: string): readonly ElementLine[] {
  const line = lineFrequencyOf(motor);
  const lines: ElementLine[] = [
    {
      name: 'twice-line',
      meaning: 'Twice line frequency: magnetic pull of an uneven air gap, loose iron, a stator fault',
      form: answer([counted(2, line)]),
      harmonics: 2,
      sources: [clause(inductionMotorPractice, 'twice line frequency')],
    },
  ];
  const carrier = present(sheet, 'carrier');
  if (carrier === undefined) return lines;
  const sources = [clause(tradePractice, 'converter carrier')];
  for (const [name, meaning, sides] of carrierLines) {
    lines.push({
      name,
      meaning,
      form: carrier.known
        ? answer([measuredTimes(carrier.value, constant), ...(sides === 0 ? [] : [counted(sides, line)])])
        : unanswered([{ of: sheet.of, what: 'carrier' }]),
      harmonics: sides === 0 ? 3 : 1,
      sources,
    });
  }
  return lines;
}

const carrierLines: readonly (readonly [string, string, number])[] = [
  ['carrier', 'Carrier of the converter: electrical, not a bearing', 0],
  ['carrier-lower', 'Carrier less twice line frequency', -2],
  ['carrier-upper', 'Carrier plus twice line frequency', 2],
];
