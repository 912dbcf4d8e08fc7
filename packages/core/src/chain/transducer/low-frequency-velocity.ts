import {
  type Answer,
  aboveZeroField,
  answer,
  answerOf,
  ask,
  curveField,
  fromAll,
  levelField,
  optional,
  quantityField,
  type Sheet,
  textField,
} from '../../quantity/index.ts';
import { magnitude, scaled } from '../../signal/complex.ts';
import { highPass } from '../../signal/filters.ts';
import { seismometryNotes, tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import type { Stage } from '../stage.ts';
import { isolatedGain } from '../two-port.ts';
import { coilSheet, travelCeiling } from './coil.ts';
import { settlingOf, statedNoise } from './mounted.ts';
import { outputResistanceStage } from './stages.ts';
import {
  commonTransducerSheet,
  lowCornerSheet,
  supplyDrawSheet,
  type TransducerModel,
  transducerKind,
} from './transducer-kind.ts';

const dataSheet = {
  ...commonTransducerSheet,
  ...supplyDrawSheet,
  ...lowCornerSheet,
  sensitivity: aboveZeroField(
    quantityField('voltage per velocity', 'Nominal sensitivity', { symbol: 'S', example: '75 mV/(mm/s)' }),
  ),
  range: aboveZeroField(
    levelField(['velocity'], 'Largest velocity the electronics pass', { example: '100 mm/s peak' }),
  ),
  travel: coilSheet.travel,
  usableTo: coilSheet.usableTo,
  noise: curveField('velocity density', 'Noise at the output over the sensitivity'),
  outputResistance: optional(quantityField('resistance', 'Output resistance', { symbol: 'R_o', example: '100 ohm' })),
  orientation: optional(textField('Positions it works in')),
  largestTilt: coilSheet.largestTilt,
} as const;

type ExtendedSheet = Sheet<typeof dataSheet>;

function stagesOf(sheet: ExtendedSheet): Answer<readonly Stage[]> {
  const stated = ask(sheet, ['sensitivity', 'lowCorner', 'lowCornerOrder'], (values) => values);
  const output =
    sheet.values.outputResistance === undefined
      ? answer(0)
      : ask(sheet, ['outputResistance'], (s) => s.outputResistance as number);
  return fromAll({ stated, output }, ({ stated: s, output: ohms }) => [
    {
      name: 'coil and electronics that extend it downwards',
      part: sheet.of,
      enters: 'motion',
      leaves: 'voltage',
      through: (frequency) => isolatedGain(scaled(highPass(frequency, s.lowCorner, s.lowCornerOrder), s.sensitivity)),
      noise: statedNoise(sheet, s.sensitivity),
      features: [s.lowCorner],
    },
    outputResistanceStage(sheet.of, ohms),
  ]);
}

/** A moving coil whose electronics take its suspension out of the response, down to a corner of their own. */
function model(sheet: ExtendedSheet): TransducerModel {
  return {
    senses: 'velocity',
    reference: 'casing',
    feed: 'voltage-supply',
    signal: 'dynamic',
    sensitivity: ask(sheet, ['sensitivity'], (s) => s.sensitivity as number),
    stages: stagesOf(sheet),
    usableTo: ask(sheet, ['usableTo'], (s) => s.usableTo as number),
    ceilings: [
      ask(sheet, ['range', 'lowCorner', 'lowCornerOrder'], (s) => ({
        name: 'rated range',
        part: sheet.of,
        motion: 'velocity' as const,
        peak: s.range.value,
        gain: (frequency: number) => magnitude(highPass(frequency, s.lowCorner, s.lowCornerOrder)),
      })),
      // The electronics lift what the suspension takes away; the coil travels as if they were not there.
      travelCeiling(sheet),
    ],
    biased: undefined,
    oneNumber: undefined,
    mountedResonance: undefined,
    settling: settlingOf(sheet),
    disturbedByField: true,
    ...(sheet.values.largestTilt === undefined
      ? {}
      : { largestTilt: ask(sheet, ['largestTilt'], (s) => s.largestTilt as number) }),
    supplyDraw: answerOf<number>(sheet.values.supplyDraw, sheet.of, 'supply draw'),
    assumptions: [
      'The coil travels as far as the case moves, which errs to the pessimistic side below its suspension frequency.',
      'The lower corner is that of a Butterworth section of the stated order.',
    ],
  };
}

export const lowFrequencyVelocity = transducerKind({
  kind: 'low-frequency-velocity',
  name: 'Low-frequency velocity transducer (moving coil, electronically extended)',
  senses: 'velocity',
  dataSheet,
  model,
  sources: [clause(seismometryNotes), clause(tradePractice)],
});
