import {
  type Answer,
  aboveZeroField,
  answerIfStated,
  answerOf,
  ask,
  fromAll,
  optional,
  quantityField,
  type Sheet,
  spanField,
  textField,
} from '../../quantity/index.ts';
import { scaled } from '../../signal/complex.ts';
import { lowPass } from '../../signal/filters.ts';
import { api670 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { gapVoltage } from '../formulas/proximity-gap.ts';
import { isolatedGain } from '../two-port.ts';
import { settlingOf } from './mounted.ts';
import type { LinearTravel, ProbeNeeds } from './needs.ts';
import { outputResistanceStage } from './stages.ts';
import { commonTransducerSheet, supplyDrawSheet, type TransducerModel, transducerKind } from './transducer-kind.ts';

const dataSheet = {
  ...commonTransducerSheet,
  ...supplyDrawSheet,
  sensitivity: aboveZeroField(
    quantityField('voltage per displacement', 'Scale factor of the matched set', {
      symbol: 'S',
      example: '7.87 mV/um',
    }),
  ),
  linearRange: spanField('length', 'Gap over which it is linear', { example: '0.25..2.25 mm' }),
  setGap: optional(
    aboveZeroField(
      quantityField('length', 'Gap it is set to at rest; the middle of the linear range where left out', {
        example: '1.25 mm',
      }),
    ),
  ),
  highCorner: aboveZeroField(quantityField('frequency', 'Upper corner, −3 dB', { example: '10 kHz' })),
  noiseAndRunout: quantityField('displacement', 'Noise of the set, rms over its whole band', { example: '0.5 um' }),
  outputResistance: quantityField('resistance', 'Output resistance of the oscillator-demodulator', {
    example: '50 ohm',
  }),
  outputCurrent: optional(
    aboveZeroField(quantityField('current', 'Most current the driver gives its field cable', { example: '5 mA' })),
  ),
  driverTemperature: optional(
    spanField('temperature', 'Surroundings of the oscillator-demodulator', { example: '-35..85 °C' }),
  ),
  smallestShaft: optional(quantityField('length', 'Least shaft diameter', { example: '76 mm' })),
  calibratedOn: optional(textField('Steel its scale factor holds for', { example: '4140 steel' })),
  probeLength: optional(quantityField('length', 'Electrical length of the probe', { example: '1 m' })),
  extensionLength: optional(quantityField('length', 'Electrical length of the extension cable', { example: '8 m' })),
  matchedLength: optional(
    quantityField('length', 'Electrical length the oscillator-demodulator is matched to', { example: '9 m' }),
  ),
  leastSideClearance: optional(
    quantityField('length', 'Free of metal to the side of the tip, at least', { example: '12 mm' }),
  ),
  leastTipSpacing: optional(
    quantityField('length', 'Distance of two tips that do not hear each other, at least', { example: '40 mm' }),
  ),
} as const;

type ProximitySheet = Sheet<typeof dataSheet>;

/** The whole linear range, and the room to its nearer end from the gap that is set. */
function linearTravel(sheet: ProximitySheet): Answer<LinearTravel> {
  return fromAll(
    {
      stated: ask(sheet, ['sensitivity', 'linearRange'], (values) => values),
      set: answerIfStated(sheet.values.setGap, sheet.of, 'set gap'),
    },
    ({
      stated: {
        sensitivity,
        linearRange: { low, high },
      },
      set,
    }) => {
      const gap = set ?? (low + high) / 2;
      return {
        range: high - low,
        room: Math.max(0, Math.min(gap - low, high - gap)),
        set: { gap, voltage: gapVoltage(sensitivity, gap) },
      };
    },
  );
}

function probeNeeds(sheet: ProximitySheet): ProbeNeeds {
  const { values } = sheet;
  const length = (name: 'smallestShaft' | 'leastSideClearance' | 'leastTipSpacing') =>
    ask(sheet, [name], (s) => s[name] as number);
  return {
    ...(values.smallestShaft === undefined ? {} : { smallestShaft: length('smallestShaft') }),
    ...(values.leastSideClearance === undefined ? {} : { sideClearance: length('leastSideClearance') }),
    ...(values.leastTipSpacing === undefined ? {} : { tipSpacing: length('leastTipSpacing') }),
    ...(values.calibratedOn === undefined ? {} : { calibratedOn: ask(sheet, ['calibratedOn'], (s) => s.calibratedOn) }),
    ...electricalLength(sheet),
  };
}

/** Where one of the three lengths is stated the others are needed too; a set that states none is taken as matched. */
function electricalLength(sheet: ProximitySheet): Pick<ProbeNeeds, 'electricalLength'> {
  const { probeLength, extensionLength, matchedLength } = sheet.values;
  if (probeLength === undefined && extensionLength === undefined && matchedLength === undefined) return {};
  return {
    electricalLength: ask(sheet, ['probeLength', 'extensionLength', 'matchedLength'], (s) => ({
      together: s.probeLength + s.extensionLength,
      matched: s.matchedLength,
    })),
  };
}

/** A matched set of probe, extension cable and oscillator-demodulator: gap to voltage from rest up to its corner. */
function model(sheet: ProximitySheet): TransducerModel {
  const stated = ask(sheet, ['sensitivity', 'highCorner', 'noiseAndRunout', 'outputResistance'], (values) => values);
  const travel = linearTravel(sheet);
  return {
    senses: 'displacement',
    reference: 'shaft-relative',
    feed: 'negative-supply',
    signal: 'dynamic',
    sensitivity: ask(sheet, ['sensitivity'], (s) => s.sensitivity as number),
    stages: fromAll({ stated }, ({ stated: s }) => [
      {
        name: 'gap to voltage',
        part: sheet.of,
        enters: 'motion' as const,
        leaves: 'voltage' as const,
        through: (frequency: number) => isolatedGain(scaled(lowPass(frequency, s.highCorner, 1), s.sensitivity)),
        // Run-out stands at the orders that are looked for, so the stated number counts in full in any line.
        residual: s.noiseAndRunout * s.sensitivity,
      },
      outputResistanceStage(sheet.of, s.outputResistance),
    ]),
    usableTo: undefined,
    ceilings: [
      fromAll({ travel }, ({ travel: { room } }) => ({
        name: 'linear range about the set gap',
        part: sheet.of,
        motion: 'displacement' as const,
        peak: room,
        gain: () => 1,
      })),
    ],
    biased: undefined,
    oneNumber: undefined,
    mountedResonance: undefined,
    settling: settlingOf(sheet),
    linearTravel: travel,
    probe: probeNeeds(sheet),
    ...(sheet.values.outputCurrent === undefined
      ? {}
      : { outputCurrent: ask(sheet, ['outputCurrent'], (s) => s.outputCurrent as number) }),
    ...(sheet.values.driverTemperature === undefined
      ? {}
      : {
          apart: {
            name: 'oscillator-demodulator',
            temperature: ask(sheet, ['driverTemperature'], (s) => s.driverTemperature),
          },
        }),
    supplyDraw: answerOf<number>(sheet.values.supplyDraw, sheet.of, 'supply draw'),
    assumptions: [
      sheet.values.setGap === undefined
        ? 'The gap is set to the middle of the linear range.'
        : 'The gap is set as the data sheet says.',
      'The gap voltage lies on a straight line through zero; the curve of this set, on its own steel, tells it better.',
      'Slow-roll is within the stated noise and run-out.',
    ],
  };
}

export const proximitySystem = transducerKind({
  kind: 'proximity-system',
  name: 'Eddy-current proximity system (probe, extension cable, oscillator-demodulator)',
  senses: 'displacement',
  dataSheet,
  model,
  sources: [clause(api670)],
});
