import {
  aboveZeroField,
  ask,
  fromAll,
  optional,
  quantityField,
  type Sheet,
  type Span,
  spanField,
} from '../../quantity/index.ts';
import { complex, product } from '../../signal/complex.ts';
import { lowPass } from '../../signal/filters.ts';
import { api670 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { isolatedGain, seriesImpedance } from '../two-port.ts';
import { settlingOf } from './mounted.ts';
import { commonTransducerSheet, type TransducerModel, transducerKind } from './transducer-kind.ts';

const dataSheet = {
  ...commonTransducerSheet,
  sensitivity: aboveZeroField(
    quantityField('voltage per displacement', 'Scale factor of the matched set', {
      symbol: 'S',
      example: '7.87 mV/um',
    }),
  ),
  linearRange: spanField('length', 'Gap over which it is linear', { example: '0.25..2.25 mm' }),
  highCorner: aboveZeroField(quantityField('frequency', 'Upper corner, −3 dB', { example: '10 kHz' })),
  noiseAndRunout: quantityField('displacement', 'Noise of the set, rms over its whole band', { example: '0.5 um' }),
  outputResistance: quantityField('resistance', 'Output resistance of the oscillator-demodulator', {
    example: '50 ohm',
  }),
  driverTemperature: optional(
    spanField('temperature', 'Surroundings of the oscillator-demodulator', { example: '-35..85 °C' }),
  ),
  smallestShaft: optional(quantityField('length', 'Least shaft diameter', { example: '76 mm' })),
} as const;

/** A matched set of probe, extension cable and oscillator-demodulator: gap to voltage from rest up to its corner. */
function model(sheet: Sheet<typeof dataSheet>): TransducerModel {
  const stated = ask(sheet, ['sensitivity', 'highCorner', 'noiseAndRunout', 'outputResistance'], (values) => values);
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
        through: (frequency: number) =>
          isolatedGain(product(complex(s.sensitivity, 0), lowPass(frequency, s.highCorner, 1))),
        // Run-out stands at the orders that are looked for, so the stated number counts in full in any line.
        residual: s.noiseAndRunout * s.sensitivity,
      },
      {
        name: 'output resistance',
        part: sheet.of,
        enters: 'voltage' as const,
        leaves: 'voltage' as const,
        through: () => seriesImpedance(complex(s.outputResistance, 0)),
      },
    ]),
    usableTo: undefined,
    ceilings: [
      ask(sheet, ['linearRange'], (s) => ({
        name: 'linear range about mid gap',
        part: sheet.of,
        motion: 'displacement' as const,
        peak: halfWidth(s.linearRange),
        gain: () => 1,
      })),
    ],
    biased: undefined,
    oneNumber: undefined,
    mountedResonance: undefined,
    settling: settlingOf(sheet),
    assumptions: ['The gap is set to the middle of the linear range.'],
  };
}

function halfWidth(span: Span<'length'>): number {
  return (span.high - span.low) / 2;
}

export const proximitySystem = transducerKind({
  kind: 'proximity-system',
  name: 'Eddy-current proximity system (probe, extension cable, oscillator-demodulator)',
  senses: 'displacement',
  dataSheet,
  model,
  sources: [clause(api670)],
});
