import {
  type Answer,
  aboveZeroField,
  answer,
  ask,
  curveField,
  fromAll,
  levelField,
  quantityField,
  type Sheet,
} from '../../quantity/index.ts';
import { type Complex, complex, magnitude, product } from '../../signal/complex.ts';
import { highPass, lowPass, resonance } from '../../signal/filters.ts';
import { iepePractice, singleDegreeOfFreedom } from '../../source/index.ts';
import { clause } from '../../source/source.ts';
import type { MountModel } from '../mount/mount-kind.ts';
import type { Stage } from '../stage.ts';
import { isolatedGain } from '../two-port.ts';
import { biasedOutput, biasedOutputSheet } from './iepe-accelerometer.ts';
import { movedResonance, settlingOf, statedNoise } from './mounted.ts';
import { mountedResonanceStage, outputResistanceStage } from './stages.ts';
import {
  commonTransducerSheet,
  lowCornerSheet,
  optionalHighCornerSheet,
  type TransducerModel,
  transducerKind,
} from './transducer-kind.ts';

const dataSheet = {
  ...commonTransducerSheet,
  ...lowCornerSheet,
  ...optionalHighCornerSheet,
  ...biasedOutputSheet,
  sensitivity: aboveZeroField(
    quantityField('voltage per velocity', 'Nominal sensitivity', { symbol: 'S', example: '4 mV/(mm/s)' }),
  ),
  range: aboveZeroField(levelField(['velocity'], 'Largest velocity it measures', { example: '1250 mm/s peak' })),
  accelerationLimit: aboveZeroField(
    levelField(['acceleration'], 'Largest acceleration before the integrator', {
      example: '50 g peak',
    }),
  ),
  mountedResonance: aboveZeroField(
    quantityField('frequency', 'Resonance on a steel stud', { symbol: 'f_m', example: '15 kHz' }),
  ),
  quality: aboveZeroField(
    quantityField('ratio', 'Height of that resonance over the flat part', { symbol: 'Q', example: '10' }),
  ),
  noise: curveField('velocity density', 'Noise at the output over the sensitivity'),
} as const;

type VelocitySheet = Sheet<typeof dataSheet>;

/** The response after the element: the lower corner, and the upper corner of the electronics where there is one. */
function electronics(sheet: VelocitySheet): Answer<(frequency: number) => Complex> {
  const lower = ask(sheet, ['lowCorner', 'lowCornerOrder'], (s) => ({ corner: s.lowCorner, order: s.lowCornerOrder }));
  const upper =
    sheet.values.highCorner === undefined
      ? answer(undefined)
      : ask(sheet, ['highCorner', 'highCornerOrder'], (s) => ({ corner: s.highCorner, order: s.highCornerOrder }));
  return fromAll({ lower, upper }, ({ lower: below, upper: above }) => (frequency: number) => {
    const low = highPass(frequency, below.corner, below.order);
    return above === undefined ? low : product(low, lowPass(frequency, above.corner, above.order));
  });
}

function model(sheet: VelocitySheet, mount: MountModel): TransducerModel {
  const resonanceAt = movedResonance(sheet, 'mountedResonance', sheet.values.mass, mount);
  const after = electronics(sheet);
  const stated = ask(sheet, ['sensitivity', 'quality', 'outputResistance'], (values) => values);
  const stages = fromAll(
    { stated, after, resonanceAt },
    ({ stated: s, after: electric, resonanceAt: natural }): readonly Stage[] => [
      mountedResonanceStage(sheet.of, natural, s.quality),
      {
        name: 'integrating electronics',
        part: sheet.of,
        enters: 'motion',
        leaves: 'voltage',
        through: (frequency) => isolatedGain(product(complex(s.sensitivity, 0), electric(frequency))),
        noise: statedNoise(sheet, s.sensitivity),
      },
      outputResistanceStage(sheet.of, s.outputResistance),
    ],
  );
  const mechanical = fromAll({ resonanceAt, quality: ask(sheet, ['quality'], (s) => s.quality as number) }, (m) => m);
  return {
    senses: 'velocity',
    reference: 'casing',
    feed: 'constant-current',
    signal: 'dynamic',
    sensitivity: ask(sheet, ['sensitivity'], (s) => s.sensitivity as number),
    stages,
    usableTo: undefined,
    ceilings: [
      fromAll(
        { mechanical, after, limit: ask(sheet, ['range'], (s) => s.range) },
        ({ mechanical: m, after: electric, limit }) => ({
          name: 'rated range',
          part: sheet.of,
          motion: 'velocity' as const,
          peak: limit.value,
          gain: (frequency: number) =>
            magnitude(product(resonance(frequency, m.resonanceAt, m.quality), electric(frequency))),
        }),
      ),
      fromAll(
        { mechanical, limit: ask(sheet, ['accelerationLimit'], (s) => s.accelerationLimit) },
        ({ mechanical: m, limit }) => ({
          name: 'acceleration before the integrator',
          part: sheet.of,
          motion: 'acceleration' as const,
          peak: limit.value,
          gain: (frequency: number) => magnitude(resonance(frequency, m.resonanceAt, m.quality)),
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

export const piezoVelocity = transducerKind({
  kind: 'piezo-velocity',
  name: 'Piezo-velocity transducer (accelerometer with integrator)',
  senses: 'velocity',
  dataSheet,
  model,
  sources: [clause(iepePractice), clause(singleDegreeOfFreedom)],
});
