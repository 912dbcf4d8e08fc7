import { defectKind } from './defect-kind.ts';

/** Whatever amplifies stands at another step. */
export const gainOff = defectKind({
  kind: 'gain',
  name: 'Gain of the input off',
  sized: 'true over designed',
  quantity: 'ratio',
  usual: 2,
  change: (size) => ({ gain: size }),
});
