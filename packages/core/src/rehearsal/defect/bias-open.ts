import { defectKind } from './defect-kind.ts';

/** The current finds no way: the whole voltage of the supply stands at the terminal. */
export const biasOpen = defectKind({
  kind: 'bias-open',
  name: 'Line open',
  sized: 'direct voltage found: that of the supply',
  quantity: 'voltage',
  usual: 24,
  change: (size) => ({ rest: size, dead: true }),
});
