import {
  type Answer,
  aboveZeroField,
  ask,
  countField,
  curveField,
  fromAll,
  levelField,
  optional,
  quantityField,
  type Sheet,
  spanField,
} from '../../quantity/index.ts';
import { type Complex, complex, magnitude, product } from '../../signal/complex.ts';
import { highPass, resonance } from '../../signal/filters.ts';
import { iepePractice, singleDegreeOfFreedom } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import type { MountModel } from '../mount/mount-kind.ts';
import type { Stage } from '../stage.ts';
import { isolatedGain } from '../two-port.ts';
import { movedResonance, settlingOf, statedNoise } from './mounted.ts';
import { mountedResonanceStage, outputResistanceStage } from './stages.ts';
import { commonTransducerSheet, lowCornerSheet, type TransducerModel, transducerKind } from './transducer-kind.ts';

/** The electronics inside a constant-current transducer, as its data sheet states them. */
export const biasedOutputSheet = {
  bias: spanField('voltage', 'Bias voltage, lowest to highest piece', { symbol: 'V_b', example: '10..14 V' }),
  saturation: quantityField('voltage', 'Lowest output voltage before it clips', { symbol: 'V_sat', example: '2 V' }),
  ownCurrent: quantityField('current', 'Current the electronics keep for themselves', {
    symbol: 'I_s',
    example: '1 mA',
  }),
  supplyCurrent: spanField('current', 'Supply current it may be fed', { example: '2..10 mA' }),
  outputResistance: quantityField('resistance', 'Output resistance', { symbol: 'R_o', example: '100 ohm' }),
} as const;

const dataSheet = {
  ...commonTransducerSheet,
  ...lowCornerSheet,
  ...biasedOutputSheet,
  sensitivity: aboveZeroField(
    quantityField('voltage per acceleration', 'Nominal sensitivity', { symbol: 'S', example: '100 mV/g' }),
  ),
  range: aboveZeroField(
    levelField(['acceleration'], 'Largest acceleration it measures', { symbol: 'a_max', example: '80 g peak' }),
  ),
  mountedResonance: aboveZeroField(
    quantityField('frequency', 'Resonance on a steel stud', { symbol: 'f_m', example: '27 kHz' }),
  ),
  quality: aboveZeroField(
    quantityField('ratio', 'Height of that resonance over the flat part', { symbol: 'Q', example: '12' }),
  ),
  noise: curveField('acceleration density', 'Noise at the output over the sensitivity'),
  elementCount: optional(countField('Measuring axes')),
} as const;

type AccelerometerSheet = Sheet<typeof dataSheet>;

/** Mounted resonance, then the element with its electronics and their lower corner, then the output resistance. */
function stagesOf(sheet: AccelerometerSheet, resonanceAt: Answer<number>): Answer<readonly Stage[]> {
  const stated = ask(
    sheet,
    ['sensitivity', 'quality', 'lowCorner', 'lowCornerOrder', 'outputResistance'],
    (values) => values,
  );
  return fromAll({ stated, resonanceAt }, ({ stated: s, resonanceAt: natural }) => [
    mountedResonanceStage(sheet.of, natural, s.quality),
    {
      name: 'element and electronics',
      part: sheet.of,
      enters: 'motion',
      leaves: 'voltage',
      through: (frequency) => isolatedGain(scaledBy(s.sensitivity, highPass(frequency, s.lowCorner, s.lowCornerOrder))),
      noise: statedNoise(sheet, s.sensitivity),
    },
    outputResistanceStage(sheet.of, s.outputResistance),
  ]);
}

function scaledBy(factor: number, gain: Complex): Complex {
  return product(complex(factor, 0), gain);
}

function model(sheet: AccelerometerSheet, mount: MountModel): TransducerModel {
  const mass = sheet.values.mass;
  const resonanceAt = movedResonance(sheet, 'mountedResonance', mass, mount);
  return {
    senses: 'acceleration',
    reference: 'casing',
    feed: 'constant-current',
    signal: 'dynamic',
    sensitivity: ask(sheet, ['sensitivity'], ({ sensitivity }) => sensitivity),
    stages: stagesOf(sheet, resonanceAt),
    usableTo: undefined,
    ceilings: [
      fromAll(
        {
          resonanceAt,
          stated: ask(sheet, ['range', 'quality', 'lowCorner', 'lowCornerOrder'], (values) => values),
        },
        ({ resonanceAt: natural, stated: s }) => ({
          name: 'rated range',
          part: sheet.of,
          motion: 'acceleration' as const,
          peak: s.range.value,
          gain: (frequency: number) =>
            magnitude(
              product(resonance(frequency, natural, s.quality), highPass(frequency, s.lowCorner, s.lowCornerOrder)),
            ),
        }),
      ),
    ],
    biased: biasedOutput(sheet),
    oneNumber: undefined,
    mountedResonance: resonanceAt,
    settling: settlingOf(sheet),
    assumptions: ['The mounted resonance is one degree of freedom; its height is the data-sheet value on every mount.'],
  };
}

/** What a constant-current supply must feed, read from the sheet of any transducer with such electronics. */
export function biasedOutput(sheet: Sheet<typeof biasedOutputSheet>) {
  return {
    bias: ask(sheet, ['bias'], ({ bias }) => bias),
    saturation: ask(sheet, ['saturation'], ({ saturation }) => saturation as number),
    ownCurrent: ask(sheet, ['ownCurrent'], ({ ownCurrent }) => ownCurrent as number),
    supplyCurrent: ask(sheet, ['supplyCurrent'], ({ supplyCurrent }) => supplyCurrent),
  };
}

export const iepeAccelerometer = transducerKind({
  kind: 'iepe-accelerometer',
  name: 'Constant-current (IEPE) accelerometer',
  senses: 'acceleration',
  dataSheet,
  model,
  sources: [clause(iepePractice), clause(singleDegreeOfFreedom)],
});
