import {
  aboveZeroField,
  answer,
  ask,
  curveField,
  fromAll,
  levelField,
  optional,
  quantityField,
  type Sheet,
  textField,
} from '../../quantity/index.ts';
import { complex, product } from '../../signal/complex.ts';
import { suspension } from '../../signal/filters.ts';
import { seismometryNotes } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { isolatedGain, seriesImpedance } from '../two-port.ts';
import { settlingOf, statedNoise } from './mounted.ts';
import { commonTransducerSheet, type TransducerModel, transducerKind } from './transducer-kind.ts';

const dataSheet = {
  ...commonTransducerSheet,
  sensitivity: aboveZeroField(
    quantityField('voltage per velocity', 'Open circuit, well above the suspension frequency', {
      symbol: 'S',
      example: '20 mV/(mm/s)',
    }),
  ),
  suspension: aboveZeroField(
    quantityField('frequency', 'Natural frequency of the suspension', { symbol: 'f_0', example: '10 Hz' }),
  ),
  damping: aboveZeroField(quantityField('ratio', 'Damping as used, with its shunt', { symbol: 'ζ', example: '0.68' })),
  usableTo: aboveZeroField(quantityField('frequency', 'Highest frequency of its data sheet', { example: '1000 Hz' })),
  travel: aboveZeroField(levelField(['displacement'], 'Travel of the coil to its stops', { example: '2 mm peak' })),
  noise: curveField('velocity density', 'Noise at the output over the sensitivity'),
  coilResistance: optional(quantityField('resistance', 'Of the coil, at 20 °C', { example: '600 ohm' })),
  orientation: optional(textField('Positions it works in')),
} as const;

/**
 * Coil on springs: H = −r²/(1 − r² + 2jζr) of the velocity, r = f/f₀; its stops limit the displacement. The coil is
 * wired so that the case moving towards positive gives a positive voltage, hence the sign: in phase far above f₀.
 */
function model(sheet: Sheet<typeof dataSheet>): TransducerModel {
  const stated = ask(sheet, ['sensitivity', 'suspension', 'damping'], (values) => values);
  return {
    senses: 'velocity',
    reference: 'casing',
    feed: 'self-generating',
    signal: 'dynamic',
    sensitivity: ask(sheet, ['sensitivity'], (s) => s.sensitivity as number),
    stages: fromAll({ stated, coil: coilResistance(sheet) }, ({ stated: s, coil }) => [
      {
        name: 'coil on its suspension',
        part: sheet.of,
        enters: 'motion' as const,
        leaves: 'voltage' as const,
        through: (frequency: number) =>
          isolatedGain(product(complex(-s.sensitivity, 0), suspension(frequency, s.suspension, s.damping))),
        noise: statedNoise(sheet, s.sensitivity),
        features: [s.suspension as number],
      },
      {
        name: 'coil resistance',
        part: sheet.of,
        enters: 'voltage' as const,
        leaves: 'voltage' as const,
        through: () => seriesImpedance(complex(coil, 0)),
      },
    ]),
    usableTo: ask(sheet, ['usableTo'], (s) => s.usableTo as number),
    ceilings: [
      ask(sheet, ['travel'], (s) => ({
        name: 'coil travel',
        part: sheet.of,
        motion: 'displacement' as const,
        peak: s.travel.value,
        gain: () => 1,
      })),
    ],
    biased: undefined,
    oneNumber: undefined,
    mountedResonance: undefined,
    settling: settlingOf(sheet),
    assumptions: [
      'The coil travels as far as the case moves, which holds above the suspension frequency and errs to the pessimistic side below it.',
      ...(sheet.values.coilResistance === undefined
        ? ['The coil resistance is not stated: its loading by cable and input is left out.']
        : []),
    ],
  };
}

function coilResistance(sheet: Sheet<typeof dataSheet>) {
  return sheet.values.coilResistance === undefined
    ? answer(0)
    : ask(sheet, ['coilResistance'], (s) => s.coilResistance as number);
}

export const movingCoil = transducerKind({
  kind: 'moving-coil',
  name: 'Moving-coil velocity transducer',
  senses: 'velocity',
  dataSheet,
  model,
  sources: [clause(seismometryNotes, 'response of the electromagnetic seismometer')],
});
