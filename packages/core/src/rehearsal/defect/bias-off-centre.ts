import { defectKind } from './defect-kind.ts';

/** One half of a large signal is clipped, the other is not. */
export const biasOffCentre = defectKind({
  kind: 'bias-off-centre',
  name: 'Bias off its centre',
  sized: 'direct voltage of the electronics',
  quantity: 'voltage',
  usual: 3.5,
  change: (size) => ({ rest: size, bias: size }),
});
