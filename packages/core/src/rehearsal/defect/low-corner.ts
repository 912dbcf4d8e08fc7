import { highPass } from '../../signal/filters.ts';
import { defectKind } from './defect-kind.ts';
import { withStage } from './with-stage.ts';

/** A leaky insulation or another filter takes the low frequencies. */
export const lowCorner = defectKind({
  kind: 'low-corner',
  name: 'Lower corner cut higher',
  sized: 'corner added, first order',
  quantity: 'frequency',
  usual: 5,
  change: (size) => ({
    stages: (stages) => withStage(stages, 'corner as found', (frequency) => highPass(frequency, size, 1)),
  }),
});
