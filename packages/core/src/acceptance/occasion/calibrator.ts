import { levelField, motions, optional, quantityField } from '../../quantity/index.ts';
import { occasionKind } from './occasion-kind.ts';

export const calibrator = occasionKind({
  kind: 'calibrator',
  name: 'Vibration calibrator',
  how: 'Transducer on a calibrator of known level and frequency, through the installed cable to the input.',
  dataSheet: {
    frequency: quantityField('frequency', 'Frequency of the calibrator', { example: '159.15 Hz' }),
    level: levelField(motions, 'Its level', { example: '10 m/s2 rms' }),
    uncertainty: optional(quantityField('fraction', 'Expanded uncertainty of its level, k = 2', { example: '3 %' })),
  },
  turning: false,
});
