import { defectKind } from './defect-kind.ts';

/** Every stage as noisy: the floor rises, its shape stays. */
export const noisyInput = defectKind({
  kind: 'noisy-input',
  name: 'Noisy input',
  sized: 'noise over the predicted',
  quantity: 'ratio',
  usual: 4,
  change: (size) => ({ noise: size }),
});
