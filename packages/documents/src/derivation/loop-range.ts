import { level, showLevel, showQuantity } from '@soundpost/core';
import { comparison } from './comparison.ts';
import { type Derive, marginDerivation } from './derivation.ts';

/** Where the measuring signal ends: 20.5 mA on a scale whose end is 20 mA. */
export const loopRangeDerivation: Derive = (judged) => {
  const { prediction, target, showing } = judged;
  const range = prediction.chain.transducer.oneNumber?.range;
  if (range?.known !== true || target?.largest.known !== true) return comparison(judged);
  const end = level(range.value.quantity, (range.value.value * 16.5) / 16, range.value.detector);
  return [
    {
      formula: 'limit = range · (20.5 mA − 4 mA) / 16 mA',
      substituted: `limit = ${showLevel(range.value, showing)} · 16.5 / 16 = ${showLevel(end, showing)}`,
    },
    ...marginDerivation(
      judged,
      showQuantity(end.quantity, end.value, showing),
      showQuantity(target.largest.value.quantity, target.largest.value.value, showing),
    ),
  ];
};
