import { defectKind } from './defect-kind.ts';

/** Nothing swings, and hardly any voltage stands across the pair. */
export const biasShort = defectKind({
  kind: 'bias-short',
  name: 'Signal shorted to its return',
  sized: 'direct voltage left',
  quantity: 'voltage',
  usual: 0.4,
  change: (size) => ({ rest: size, dead: true }),
});
