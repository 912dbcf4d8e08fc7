import { defectKind } from './defect-kind.ts';

/** Too much resistance in the loop: a flat top below 20 mA. */
export const loopCompliance = defectKind({
  kind: 'loop-compliance',
  name: 'Loop short of voltage',
  sized: 'highest current it reaches',
  quantity: 'current',
  usual: 0.017,
  change: (size) => ({ loopTop: size }),
});
