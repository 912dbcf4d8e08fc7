import {
  type Answer,
  aboveZeroField,
  ask,
  fromAll,
  levelField,
  type Motion,
  motions,
  optional,
  quantityField,
  type Sheet,
} from '../../quantity/index.ts';
import { complex, product } from '../../signal/complex.ts';
import { highPass, lowPass } from '../../signal/filters.ts';
import { loopPractice, namurNe43 } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import { isolatedGain } from '../two-port.ts';
import { settlingOf } from './mounted.ts';
import { commonTransducerSheet, lowCornerSheet, type TransducerModel, transducerKind } from './transducer-kind.ts';

/** Of every sensor that detects inside and sends one number as 4 to 20 mA. */
export const loopSheet = {
  ...commonTransducerSheet,
  ...lowCornerSheet,
  range: aboveZeroField(
    levelField(motions, 'Level at 20 mA, with its detector', { symbol: 'x_FS', example: '25 mm/s rms' }),
  ),
  highCorner: aboveZeroField(quantityField('frequency', 'Upper corner, −3 dB', { example: '1000 Hz' })),
  highCornerOrder: lowCornerSheet.lowCornerOrder,
  minimumVoltage: quantityField('voltage', 'Least voltage across its terminals', { symbol: 'V_min', example: '12 V' }),
  zeroError: quantityField('fraction', 'Error of the zero, of the range', { example: '1 %' }),
  accelerationLimit: aboveZeroField(
    levelField(['acceleration'], 'Largest acceleration before the detector', { example: '50 g peak' }),
  ),
  hold: optional(quantityField('time', 'How long a peak is held', { example: '1 s' })),
} as const;

export type LoopSheet = Sheet<typeof loopSheet>;

/** A sensor that detects inside and sends one number as 4 to 20 mA: no spectrum can be had from it. */
export function loopModel(sheet: LoopSheet): TransducerModel {
  const stated = ask(
    sheet,
    ['range', 'lowCorner', 'lowCornerOrder', 'highCorner', 'highCornerOrder'],
    (values) => values,
  );
  const band = fromAll(
    { stated },
    ({ stated: s }) =>
      (frequency: number) =>
        product(
          highPass(frequency, s.lowCorner, s.lowCornerOrder),
          lowPass(frequency, s.highCorner, s.highCornerOrder),
        ),
  );
  const sensitivity: Answer<number> = ask(sheet, ['range'], (s) => 0.016 / s.range.value);
  return {
    senses: sensed(sheet),
    reference: 'casing',
    feed: 'current-loop',
    signal: 'overall',
    sensitivity,
    stages: fromAll({ band, sensitivity }, ({ band: gain, sensitivity: scale }) => [
      {
        name: 'band, detector and current output',
        part: sheet.of,
        enters: 'motion' as const,
        leaves: 'current' as const,
        through: (frequency: number) => isolatedGain(product(complex(scale, 0), gain(frequency))),
      },
    ]),
    usableTo: undefined,
    ceilings: [
      ask(sheet, ['accelerationLimit'], (s) => ({
        name: 'acceleration before the detector',
        part: sheet.of,
        motion: 'acceleration' as const,
        peak: s.accelerationLimit.value,
        gain: () => 1,
      })),
    ],
    biased: undefined,
    oneNumber: {
      range: ask(sheet, ['range'], (s) => s.range),
      zeroError: ask(sheet, ['zeroError'], (s) => s.zeroError as number),
      minimumVoltage: ask(sheet, ['minimumVoltage'], (s) => s.minimumVoltage as number),
    },
    mountedResonance: undefined,
    settling: settlingOf(sheet),
    assumptions: [
      'Its mounted resonance is not stated: the response above its upper corner is that of the corner alone.',
      ...(derivesPeak(sheet)
        ? ['Its peak is √2 × rms whatever the waveform: of knocks it shows a fraction of the true peak.']
        : []),
    ],
  };
}

/** An unstated range leaves the motion open; velocity only fills the type, since every answer is then unknown. */
function sensed(sheet: LoopSheet): Motion {
  return sheet.values.range.known ? sheet.values.range.value.quantity : 'velocity';
}

function derivesPeak(sheet: LoopSheet): boolean {
  return sheet.values.range.known && sheet.values.range.value.detector === 'derived-peak';
}

export const loopSensor = transducerKind({
  kind: 'loop-sensor',
  name: 'Loop-powered 4–20 mA vibration sensor',
  senses: 'stated',
  dataSheet: loopSheet,
  model: loopModel,
  sources: [clause(loopPractice), clause(namurNe43)],
});
