import { defectKind } from './defect-kind.ts';

/** A part of another sensitivity stands at the point. */
export const sensitivityOff = defectKind({
  kind: 'sensitivity',
  name: 'Another sensitivity than designed',
  sized: 'true over nominal',
  quantity: 'ratio',
  usual: 10,
  change: (size) => ({ gain: size }),
});
