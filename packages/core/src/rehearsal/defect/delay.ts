import { complex } from '../../signal/complex.ts';
import { defectKind } from './defect-kind.ts';
import { withStage } from './with-stage.ts';

/** A filter or another recorder holds this channel back. */
export const delay = defectKind({
  kind: 'delay',
  name: 'Delay against the other channels',
  sized: 'time',
  quantity: 'time',
  usual: 0.001,
  change: (size) => ({
    stages: (stages) =>
      withStage(stages, 'delay', (frequency) => {
        const angle = -2 * Math.PI * frequency * size;
        return complex(Math.cos(angle), Math.sin(angle));
      }),
  }),
});
