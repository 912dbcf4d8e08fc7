import {
  aboveZeroField,
  answerIfStated,
  answerOf,
  ask,
  fromAll,
  levelField,
  optional,
  quantityField,
  type Sheet,
  textField,
} from '../../quantity/index.ts';
import { scaled } from '../../signal/complex.ts';
import { lowPass } from '../../signal/filters.ts';
import { screeningRules, tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { filterOrderField } from '../filter-order-field.ts';
import { isolatedGain } from '../two-port.ts';
import { settlingOf } from './mounted.ts';
import { outputResistanceStage } from './stages.ts';
import { commonTransducerSheet, supplyDrawSheet, type TransducerModel, transducerKind } from './transducer-kind.ts';

const dataSheet = {
  ...commonTransducerSheet,
  ...supplyDrawSheet,
  sensitivity: aboveZeroField(
    quantityField('voltage per displacement', 'Sensitivity with its conditioner', {
      symbol: 'S',
      example: '0.4 mV/um',
    }),
  ),
  stroke: aboveZeroField(levelField(['displacement'], 'Travel of the core to either side', { example: '25 mm peak' })),
  highCorner: aboveZeroField(
    quantityField('frequency', 'Upper corner of the conditioner, −3 dB', { example: '200 Hz' }),
  ),
  highCornerOrder: optional(filterOrderField('Order of the upper corner')),
  noise: quantityField('displacement', 'Noise with its conditioner, rms over its whole band', { example: '2 um' }),
  outputResistance: optional(
    quantityField('resistance', 'Output resistance of the conditioner', { symbol: 'R_o', example: '50 ohm' }),
  ),
  contact: optional(textField('What touches or is coupled, and what wears')),
} as const;

/** A core that moves in a transformer: the distance of two bodies, from rest up to the corner of its conditioner. */
function model(sheet: Sheet<typeof dataSheet>): TransducerModel {
  const stated = ask(sheet, ['sensitivity', 'highCorner', 'noise'], (values) => values);
  const order = answerIfStated(sheet.values.highCornerOrder, sheet.of, 'high corner order');
  const output = answerIfStated(sheet.values.outputResistance, sheet.of, 'output resistance');
  return {
    senses: 'displacement',
    reference: 'two-body',
    feed: 'voltage-supply',
    signal: 'dynamic',
    sensitivity: ask(sheet, ['sensitivity'], (s) => s.sensitivity as number),
    stages: fromAll({ stated, order, output }, ({ stated: s, order: n, output: ohms }) => [
      {
        name: 'core, coils and conditioner',
        part: sheet.of,
        enters: 'motion' as const,
        leaves: 'voltage' as const,
        through: (frequency: number) => isolatedGain(scaled(lowPass(frequency, s.highCorner, n ?? 1), s.sensitivity)),
        // The one number stated may all lie in the line that is looked for.
        residual: s.noise * s.sensitivity,
      },
      outputResistanceStage(sheet.of, ohms ?? 0),
    ]),
    usableTo: undefined,
    ceilings: [
      ask(sheet, ['stroke'], (s) => ({
        name: 'stroke about its middle',
        part: sheet.of,
        motion: 'displacement' as const,
        peak: s.stroke.value,
        gain: () => 1,
      })),
    ],
    biased: undefined,
    oneNumber: undefined,
    mountedResonance: undefined,
    settling: settlingOf(sheet),
    linearTravel: ask(sheet, ['stroke'], (s) => ({ range: 2 * s.stroke.value, room: s.stroke.value })),
    supplyDraw: answerOf<number>(sheet.values.supplyDraw, sheet.of, 'supply draw'),
    assumptions: [
      'The core is set to the middle of its stroke.',
      'Its rod follows without lifting off; a contacting part wears, and sticks in dust.',
    ],
  };
}

export const lvdt = transducerKind({
  kind: 'lvdt',
  name: 'Displacement transformer (LVDT) with conditioner',
  senses: 'displacement',
  dataSheet,
  model,
  sources: [clause(tradePractice, 'position, contact, wear'), clause(screeningRules, 'rule 5')],
});
