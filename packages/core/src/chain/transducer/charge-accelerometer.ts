import {
  type Answer,
  aboveZeroField,
  answerIfStated,
  ask,
  type Curve,
  curveField,
  fromAll,
  levelField,
  optional,
  quantityField,
  type Sheet,
  spanField,
  unanswered,
} from '../../quantity/index.ts';
import { complex, magnitude, product } from '../../signal/complex.ts';
import { highPass, resonance } from '../../signal/filters.ts';
import {
  chargeAmplifier,
  chargeNoise2024,
  iepePractice,
  screeningRules,
  singleDegreeOfFreedom,
  thermalNoise,
} from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { converterCorner, converterNoise, type LeakyCapacitance } from '../formulas/charge-converter.ts';
import { densityAt } from '../formulas/noise.ts';
import type { MountModel } from '../mount/mount-kind.ts';
import type { Stage } from '../stage.ts';
import { isolatedGain } from '../two-port.ts';
import { type ChargeConverter, chargeLeak, converterPort } from './charge-port.ts';
import { biasedOutput, biasedOutputSheet } from './iepe-accelerometer.ts';
import { movedResonance, settlingOf } from './mounted.ts';
import { mountedResonanceStage, outputResistanceStage } from './stages.ts';
import { commonTransducerSheet, type TransducerModel, transducerKind } from './transducer-kind.ts';

const dataSheet = {
  ...commonTransducerSheet,
  ...biasedOutputSheet,
  elementSensitivity: aboveZeroField(
    quantityField('charge per acceleration', 'Charge sensitivity of the element', {
      symbol: 'S_q',
      example: '25 pC/g',
    }),
  ),
  range: aboveZeroField(
    levelField(['acceleration'], 'Largest acceleration the set measures', { example: '80 g peak' }),
  ),
  mountedResonance: aboveZeroField(
    quantityField('frequency', 'Resonance on a steel stud', { symbol: 'f_m', example: '22 kHz' }),
  ),
  quality: aboveZeroField(
    quantityField('ratio', 'Height of that resonance over the flat part', { symbol: 'Q', example: '25' }),
  ),
  sourceCapacitance: aboveZeroField(
    quantityField('capacitance', 'Capacitance of the element', { symbol: 'C_s', example: '1000 pF' }),
  ),
  cableCapacitance: optional(
    quantityField('capacitance', 'Of the low-noise cable between element and converter', {
      symbol: 'C_c',
      example: '500 pF',
    }),
  ),
  insulationCold: optional(
    aboveZeroField(
      quantityField('resistance', 'Insulation of element and cable, cold', { symbol: 'R_s', example: '1 Gohm' }),
    ),
  ),
  insulationHot: optional(
    aboveZeroField(
      quantityField('resistance', 'Insulation of element and cable at their highest temperature', {
        symbol: 'R_s',
        example: '10 Mohm',
      }),
    ),
  ),
  feedbackCapacitance: aboveZeroField(
    quantityField('capacitance', 'Feedback capacitance of the converter', {
      symbol: 'C_f',
      example: '250 pF',
    }),
  ),
  feedbackResistance: aboveZeroField(
    quantityField('resistance', 'Feedback resistance of the converter', {
      symbol: 'R_f',
      example: '1 Gohm',
    }),
  ),
  amplifierGain: optional(
    aboveZeroField(
      quantityField('ratio', 'Open-loop gain of the amplifier; taken as infinite where left out', { example: '20000' }),
    ),
  ),
  amplifierNoise: optional(curveField('voltage density', 'Noise of the amplifier, at its input')),
  noise: optional(curveField('acceleration density', 'Noise of the set at the output over the sensitivity')),
  converterTemperature: spanField('temperature', 'Surroundings of the converter', { example: '-40..100 °C' }),
} as const;

type ChargeSheet = Sheet<typeof dataSheet>;

/** Circuit simulators take 27 °C for the thermal noise of a resistor; so does the model. */
const roomTemperature = 300.15;

/** Element, low-noise cable and converter, all of one data sheet. */
interface MatchedSet {
  readonly elementSensitivity: number;
  readonly source: LeakyCapacitance;
  readonly converter: ChargeConverter;
  readonly stated: Curve | undefined;
  readonly amplifier: Curve | undefined;
}

function matchedSet(sheet: ChargeSheet): Answer<MatchedSet> {
  const { values, of } = sheet;
  return fromAll(
    {
      needed: ask(
        sheet,
        ['elementSensitivity', 'sourceCapacitance', 'feedbackCapacitance', 'feedbackResistance'],
        (known) => known,
      ),
      cable: answerIfStated(values.cableCapacitance, of, 'cable capacitance'),
      insulation:
        values.insulationHot === undefined
          ? answerIfStated(values.insulationCold, of, 'insulation cold')
          : answerIfStated(values.insulationHot, of, 'insulation hot'),
      gain: answerIfStated(values.amplifierGain, of, 'amplifier gain'),
      stated: answerIfStated(values.noise, of, 'noise'),
      amplifier: answerIfStated(values.amplifierNoise, of, 'amplifier noise'),
    },
    ({ needed, cable, insulation, gain, stated, amplifier }) => ({
      elementSensitivity: needed.elementSensitivity,
      source: { capacitance: needed.sourceCapacitance + (cable ?? 0), resistance: insulation },
      converter: {
        feedback: { capacitance: needed.feedbackCapacitance, resistance: needed.feedbackResistance },
        gain,
      },
      stated,
      amplifier,
    }),
  );
}

/**
 * The stated noise of the set, or what its amplifier and resistors make with this cable and this insulation, whichever
 * is larger at each frequency: the stated curve was measured cold and on a short cable.
 */
function noiseOf(set: MatchedSet, sensitivity: number, of: string): Answer<(frequency: number) => number> {
  const { stated, amplifier, source, converter } = set;
  if (stated === undefined && amplifier === undefined) return unanswered([{ of, what: 'noise or amplifier noise' }]);
  return {
    known: true,
    value: (frequency) =>
      Math.max(
        stated === undefined ? 0 : densityAt(stated, frequency) * sensitivity,
        amplifier === undefined
          ? 0
          : converterNoise(densityAt(amplifier, frequency), converter.feedback, source, frequency, roomTemperature),
      ),
  };
}

function stagesOf(sheet: ChargeSheet, set: Answer<MatchedSet>, resonanceAt: Answer<number>): Answer<readonly Stage[]> {
  const stated = ask(sheet, ['quality', 'outputResistance'], (values) => values);
  return fromAll({ stated, set, resonanceAt }, ({ stated: s, set: pair, resonanceAt: natural }) => [
    mountedResonanceStage(sheet.of, natural, s.quality),
    {
      name: 'element',
      part: sheet.of,
      enters: 'motion',
      leaves: 'charge',
      through: () => isolatedGain(complex(pair.elementSensitivity, 0)),
    },
    {
      name: 'capacitance and insulation of element and low-noise cable',
      part: sheet.of,
      enters: 'charge',
      leaves: 'charge',
      through: (frequency) => chargeLeak(pair.source, frequency),
    },
    {
      name: 'charge converter',
      part: sheet.of,
      enters: 'charge',
      leaves: 'voltage',
      through: (frequency) => converterPort(pair.converter, frequency),
      noise: noiseOf(pair, pair.elementSensitivity / pair.converter.feedback.capacitance, sheet.of),
    },
    outputResistanceStage(sheet.of, s.outputResistance),
  ]);
}

/** Element and remote converter as a matched pair: charge from the hot place, voltage on constant current from the cool. */
function model(sheet: ChargeSheet, mount: MountModel): TransducerModel {
  const resonanceAt = movedResonance(sheet, 'mountedResonance', sheet.values.mass, mount);
  const set = matchedSet(sheet);
  return {
    senses: 'acceleration',
    reference: 'casing',
    feed: 'constant-current',
    signal: 'dynamic',
    sensitivity: ask(
      sheet,
      ['elementSensitivity', 'feedbackCapacitance'],
      (s) => s.elementSensitivity / s.feedbackCapacitance,
    ),
    stages: stagesOf(sheet, set, resonanceAt),
    usableTo: undefined,
    ceilings: [
      fromAll(
        {
          resonanceAt,
          stated: ask(sheet, ['range', 'quality', 'feedbackResistance', 'feedbackCapacitance'], (values) => values),
        },
        ({ resonanceAt: natural, stated: s }) => {
          const corner = converterCorner(s.feedbackResistance, s.feedbackCapacitance);
          return {
            name: 'rated range',
            part: sheet.of,
            motion: 'acceleration' as const,
            peak: s.range.value,
            gain: (frequency: number) =>
              magnitude(product(resonance(frequency, natural, s.quality), highPass(frequency, corner, 1))),
          };
        },
      ),
    ],
    biased: biasedOutput(sheet),
    oneNumber: undefined,
    mountedResonance: resonanceAt,
    settling: settlingOf(sheet),
    apart: {
      name: 'charge converter',
      temperature: ask(sheet, ['converterTemperature'], (s) => s.converterTemperature),
    },
    assumptions: assumptionsOf(sheet),
  };
}

function assumptionsOf({ values }: ChargeSheet): readonly string[] {
  const both = values.noise !== undefined && values.amplifierNoise !== undefined;
  const insulation =
    values.insulationHot !== undefined
      ? 'Noise is reckoned with the insulation at its highest temperature.'
      : values.insulationCold !== undefined
        ? 'Noise is reckoned with the cold insulation: hot, it is higher below the corner.'
        : 'The insulation is not stated: what its heat adds to noise and drift below the corner is left out.';
  return [
    'The mounted resonance is one degree of freedom; its height is the data-sheet value on every mount.',
    both
      ? 'Noise is the stated curve of the set, or that of amplifier and resistors with this cable and insulation where it is larger.'
      : values.amplifierNoise === undefined
        ? 'Noise is the stated curve of the set: another cable or hot insulation is not in it.'
        : 'Noise is that of amplifier and resistors with this cable and insulation, at 27 °C.',
    insulation,
    'The sign of the output is that of the acceleration.',
  ];
}

export const chargeAccelerometer = transducerKind({
  kind: 'charge-accelerometer',
  name: 'Charge accelerometer with remote charge converter',
  senses: 'acceleration',
  dataSheet,
  model,
  sources: [
    clause(chargeAmplifier),
    clause(screeningRules, 'F24'),
    clause(thermalNoise),
    clause(chargeNoise2024),
    clause(iepePractice),
    clause(singleDegreeOfFreedom),
  ],
});
