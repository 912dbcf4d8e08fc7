import {
  type Answer,
  aboveZeroField,
  answerIfStated,
  ask,
  curveField,
  fromAll,
  levelField,
  optional,
  quantityField,
  type Sheet,
} from '../../quantity/index.ts';
import { type Complex, magnitude, product, scaled } from '../../signal/complex.ts';
import { highPass, resonance } from '../../signal/filters.ts';
import { loopPractice, singleDegreeOfFreedom } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { filterOrderField } from '../filter-order-field.ts';
import { densityAt } from '../formulas/noise.ts';
import type { MountModel } from '../mount/mount-kind.ts';
import type { Stage } from '../stage.ts';
import { isolatedGain } from '../two-port.ts';
import { loopModel, loopSheet } from './loop-sensor.ts';
import { movedResonance, settlingOf } from './mounted.ts';
import { outputResistanceStage } from './stages.ts';
import { type TransducerModel, transducerKind } from './transducer-kind.ts';

const dataSheet = {
  ...loopSheet,
  rawSensitivity: aboveZeroField(
    quantityField('voltage per acceleration', 'Nominal sensitivity of the raw output', {
      symbol: 'S',
      example: '100 mV/g',
    }),
  ),
  rawRange: aboveZeroField(
    levelField(['acceleration'], 'Largest acceleration the raw output passes', { example: '20 g peak' }),
  ),
  rawLowCorner: aboveZeroField(
    quantityField('frequency', 'Lower corner of the raw output, −3 dB', { example: '0.5 Hz' }),
  ),
  rawLowCornerOrder: filterOrderField('Order of that corner'),
  mountedResonance: aboveZeroField(
    quantityField('frequency', 'Resonance on a steel stud', { symbol: 'f_m', example: '20 kHz' }),
  ),
  quality: aboveZeroField(
    quantityField('ratio', 'Height of that resonance over the flat part', { symbol: 'Q', example: '10' }),
  ),
  rawNoise: curveField('acceleration density', 'Noise at the raw output over its sensitivity'),
  rawOutputResistance: optional(
    quantityField('resistance', 'Output resistance of the raw output', { symbol: 'R_o', example: '500 ohm' }),
  ),
} as const;

type DualSheet = Sheet<typeof dataSheet>;

function rawResponse(sheet: DualSheet, resonanceAt: Answer<number>): Answer<(frequency: number) => Complex> {
  return fromAll(
    { resonanceAt, stated: ask(sheet, ['quality', 'rawLowCorner', 'rawLowCornerOrder'], (values) => values) },
    ({ resonanceAt: natural, stated: s }) =>
      (frequency: number) =>
        product(resonance(frequency, natural, s.quality), highPass(frequency, s.rawLowCorner, s.rawLowCornerOrder)),
  );
}

function rawStages(sheet: DualSheet, resonanceAt: Answer<number>): Answer<readonly Stage[]> {
  return fromAll(
    {
      resonanceAt,
      response: rawResponse(sheet, resonanceAt),
      sensitivity: ask(sheet, ['rawSensitivity'], (s) => s.rawSensitivity as number),
      output: answerIfStated(sheet.values.rawOutputResistance, sheet.of, 'raw output resistance'),
    },
    ({ resonanceAt: natural, response, sensitivity, output }) => [
      {
        name: 'element and raw output',
        part: sheet.of,
        enters: 'motion',
        leaves: 'voltage',
        features: [natural],
        through: (frequency) => isolatedGain(scaled(response(frequency), sensitivity)),
        noise: ask(sheet, ['rawNoise'], (s) => (frequency: number) => densityAt(s.rawNoise, frequency) * sensitivity),
      },
      outputResistanceStage(sheet.of, output ?? 0),
    ],
  );
}

/** The raw output: acceleration as it is, before the detector, for whoever comes with a collector. */
function rawOutput(sheet: DualSheet, mount: MountModel): TransducerModel {
  const resonanceAt = movedResonance(sheet, 'mountedResonance', sheet.values.mass, mount);
  return {
    senses: 'acceleration',
    reference: 'casing',
    // The loop feeds the device; the input that reads its raw output need not, and must not.
    feed: 'self-generating',
    signal: 'dynamic',
    sensitivity: ask(sheet, ['rawSensitivity'], (s) => s.rawSensitivity as number),
    stages: rawStages(sheet, resonanceAt),
    usableTo: undefined,
    ceilings: [
      fromAll(
        { response: rawResponse(sheet, resonanceAt), range: ask(sheet, ['rawRange'], (s) => s.rawRange) },
        ({ response, range }) => ({
          name: 'range of the raw output',
          part: sheet.of,
          motion: 'acceleration' as const,
          peak: range.value,
          gain: (frequency: number) => magnitude(response(frequency)),
        }),
      ),
    ],
    biased: undefined,
    oneNumber: undefined,
    mountedResonance: resonanceAt,
    settling: settlingOf(sheet),
    assumptions: [
      'The raw output is alive only while the loop feeds the device.',
      'The mounted resonance is one degree of freedom; its height is the data-sheet value on every mount.',
    ],
  };
}

/** One number on the loop, and beside it the motion as it is: an input takes the one or the other. */
function model(sheet: DualSheet, mount: MountModel): TransducerModel {
  return { ...loopModel(sheet), otherOutput: rawOutput(sheet, mount) };
}

export const dualOutput = transducerKind({
  kind: 'dual-output',
  name: 'Loop-powered sensor with one number on the loop and a raw output',
  senses: 'stated',
  dataSheet,
  model,
  sources: [clause(loopPractice), clause(singleDegreeOfFreedom)],
});
