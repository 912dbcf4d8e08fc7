import { showQuantity } from '@soundpost/core';
import { comparison } from './comparison.ts';
import { type Derive, marginDerivation } from './derivation.ts';

/** The end of the data sheet over the end of the target's band. */
export const usableFrequencyDerivation: Derive = (judged) => {
  const { prediction, target, showing } = judged;
  const { usableTo } = prediction.chain.transducer;
  if (usableTo?.known !== true || target?.band.known !== true) return comparison(judged);
  return [
    ...comparison(judged),
    ...marginDerivation(
      judged,
      showQuantity('frequency', usableTo.value, showing),
      showQuantity('frequency', target.band.value.high, showing),
    ),
  ];
};
