import { defectKind } from './defect-kind.ts';

/** Leakage pulls the bias down and adds noise; the signal still comes, with less room below. */
export const biasWet = defectKind({
  kind: 'bias-wet',
  name: 'Connector wet or electronics hot',
  sized: 'direct voltage found',
  quantity: 'voltage',
  usual: 6,
  change: (size) => ({ rest: size, bias: size, noise: 2 }),
});
