import { defectKind } from './defect-kind.ts';

/** Steep parts become straight lines. */
export const cableSlew = defectKind({
  kind: 'cable-slew',
  name: 'Too little current for the cable',
  sized: 'slew over the designed',
  quantity: 'ratio',
  usual: 0.1,
  change: (size) => ({ slew: size }),
});
