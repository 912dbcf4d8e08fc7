import { quantityField } from '../../quantity/index.ts';
import { readingKind } from './reading-kind.ts';

export const probeCurve = readingKind({
  kind: 'probe-curve',
  name: 'Calibration curve of a probe',
  how: 'Probe, cable and driver as installed, on a target of the very steel of the shaft, nine or more gaps in even steps.',
  row: {
    gap: quantityField('length', 'Gap that was set', { example: '0.75 mm' }),
    voltage: quantityField('voltage', 'Direct voltage that was read', { example: '-6.0 V' }),
  },
});
