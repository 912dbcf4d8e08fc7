import {
  type Answer,
  aboveZeroField,
  answerIfStated,
  answerOf,
  ask,
  curveField,
  fromAll,
  levelField,
  optional,
  quantityField,
  type Sheet,
} from '../../quantity/index.ts';
import { type Complex, magnitude, product, scaled } from '../../signal/complex.ts';
import { lowPass, resonance } from '../../signal/filters.ts';
import { singleDegreeOfFreedom, tradePractice } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import type { MountModel } from '../mount/mount-kind.ts';
import type { Stage } from '../stage.ts';
import { isolatedGain } from '../two-port.ts';
import { movedResonance, settlingOf, statedNoise } from './mounted.ts';
import { outputResistanceStage } from './stages.ts';
import {
  commonTransducerSheet,
  optionalHighCornerSheet,
  supplyDrawSheet,
  type TransducerModel,
  transducerKind,
} from './transducer-kind.ts';

const dataSheet = {
  ...commonTransducerSheet,
  ...supplyDrawSheet,
  ...optionalHighCornerSheet,
  sensitivity: aboveZeroField(
    quantityField('voltage per acceleration', 'Nominal sensitivity', { symbol: 'S', example: '2 V/g' }),
  ),
  range: aboveZeroField(
    levelField(['acceleration'], 'Largest acceleration it measures, gravity along its axis included', {
      symbol: 'a_max',
      example: '2 g peak',
    }),
  ),
  mountedResonance: aboveZeroField(
    quantityField('frequency', 'Resonance on a steel stud, or of its damped element', {
      symbol: 'f_m',
      example: '2 kHz',
    }),
  ),
  quality: aboveZeroField(
    quantityField('ratio', 'Height of that resonance over the flat part; below 0.71 there is no peak', {
      symbol: 'Q',
      example: '0.8',
    }),
  ),
  noise: curveField('acceleration density', 'Noise at the output over the sensitivity'),
  outputResistance: optional(quantityField('resistance', 'Output resistance', { symbol: 'R_o', example: '100 ohm' })),
} as const;

type CapacitiveSheet = Sheet<typeof dataSheet>;

/** The damped element, and the upper corner of the electronics where there is one; nothing takes rest away. */
function passed(sheet: CapacitiveSheet, resonanceAt: Answer<number>): Answer<(frequency: number) => Complex> {
  const { values, of } = sheet;
  return fromAll(
    {
      resonanceAt,
      quality: ask(sheet, ['quality'], (s) => s.quality as number),
      high: answerIfStated(values.highCorner, of, 'high corner'),
      order: answerIfStated(values.highCornerOrder, of, 'high corner order'),
    },
    ({ resonanceAt: natural, quality, high, order }) =>
      (frequency: number) => {
        const element = resonance(frequency, natural, quality);
        return high === undefined ? element : product(element, lowPass(frequency, high, order ?? 1));
      },
  );
}

function stagesOf(sheet: CapacitiveSheet, resonanceAt: Answer<number>): Answer<readonly Stage[]> {
  return fromAll(
    {
      gain: passed(sheet, resonanceAt),
      resonanceAt,
      sensitivity: ask(sheet, ['sensitivity'], (s) => s.sensitivity as number),
      output: answerIfStated(sheet.values.outputResistance, sheet.of, 'output resistance'),
    },
    ({ gain, resonanceAt: natural, sensitivity, output }) => [
      {
        name: 'element and electronics',
        part: sheet.of,
        enters: 'motion',
        leaves: 'voltage',
        features: [natural],
        through: (frequency) => isolatedGain(scaled(gain(frequency), sensitivity)),
        noise: statedNoise(sheet, sensitivity),
      },
      outputResistanceStage(sheet.of, output ?? 0),
    ],
  );
}

/** A mass between plates, read as a capacitance: from rest, gravity included, up to its damped resonance. */
function model(sheet: CapacitiveSheet, mount: MountModel): TransducerModel {
  const resonanceAt = movedResonance(sheet, 'mountedResonance', sheet.values.mass, mount);
  return {
    senses: 'acceleration',
    reference: 'casing',
    feed: 'voltage-supply',
    signal: 'dynamic',
    sensitivity: ask(sheet, ['sensitivity'], (s) => s.sensitivity as number),
    stages: stagesOf(sheet, resonanceAt),
    usableTo: undefined,
    ceilings: [
      fromAll(
        { gain: passed(sheet, resonanceAt), range: ask(sheet, ['range'], (s) => s.range) },
        ({ gain, range }) => ({
          name: 'rated range',
          part: sheet.of,
          motion: 'acceleration' as const,
          peak: range.value,
          // The element itself is at its end before its own damping helps: what knocks it is not taken away.
          gain: (frequency: number) => Math.max(1, magnitude(gain(frequency))),
        }),
      ),
    ],
    biased: undefined,
    oneNumber: undefined,
    mountedResonance: resonanceAt,
    settling: settlingOf(sheet),
    supplyDraw: answerOf<number>(sheet.values.supplyDraw, sheet.of, 'supply draw'),
    assumptions: [
      'Gravity along its axis takes up to 1 g of its range: state it as a disturbance where the axis is not level.',
      'A tilt is read as an acceleration of 17 mg a degree; below about 1 Hz it cannot be told from motion.',
    ],
  };
}

export const capacitiveDc = transducerKind({
  kind: 'capacitive-dc',
  name: 'Capacitive accelerometer with response from rest',
  senses: 'acceleration',
  dataSheet,
  model,
  sources: [clause(singleDegreeOfFreedom), clause(tradePractice, 'DC response: 0 Hz, tilt, small range')],
});
