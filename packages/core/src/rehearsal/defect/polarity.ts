import { defectKind } from './defect-kind.ts';

/** Pair exchanged or transducer turned round: half a turn of phase. */
export const polarity = defectKind({
  kind: 'polarity',
  name: 'Polarity inverted',
  sized: 'share of the signal inverted: 1 is all of it',
  quantity: 'ratio',
  usual: 1,
  change: (size) => ({ gain: 1 - 2 * size }),
});
