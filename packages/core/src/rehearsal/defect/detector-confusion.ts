import { defectKind } from './defect-kind.ts';

/** The volts are right; the number beside them is of another detector. */
export const detectorConfusion = defectKind({
  kind: 'detector-confusion',
  name: 'Peak shown as rms, or the reverse',
  sized: 'shown over true',
  quantity: 'ratio',
  usual: Math.SQRT2,
  change: (size) => ({ scale: size }),
});
