import { countField, flagField, levelField, motions, optional, quantityField } from '../../quantity/index.ts';
import { readingKind } from './reading-kind.ts';

export const loopSteps = readingKind({
  kind: 'loop-steps',
  name: 'Loop fed by a source',
  how: 'A loop source in place of the transducer; 4, 8, 12, 16 and 20 mA, and the two failure currents.',
  row: {
    current: quantityField('current', 'Current that was fed', { example: '12 mA' }),
    counts: optional(countField('Counts the controller shows', { least: 0, example: '16000' })),
    display: optional(levelField(motions, 'What the display shows', { example: '12.5 mm/s rms' })),
    fault: optional(flagField('Whether the controller reports a fault of the channel')),
  },
});
