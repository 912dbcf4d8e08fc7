import { showMeasure, showQuantity } from '@soundpost/core';
import { comparison } from './comparison.ts';
import { type Derive, gives } from './derivation.ts';

/** How far the output can swing up and down over the tolerance of the bias. */
export const biasWindowDerivation: Derive = (judged) => {
  const { prediction, judgement, showing } = judged;
  const { bias, chain } = prediction;
  const { biased } = chain.transducer;
  const constantCurrent = chain.fedBy;
  if (
    !showMeasure(judgement.what).startsWith('swing') ||
    bias?.known !== true ||
    biased?.saturation.known !== true ||
    constantCurrent?.compliance.known !== true ||
    !constantCurrent.drop.known
  ) {
    return comparison(judged);
  }
  const { low, high, lineDrop, swing } = bias.value;
  const [compliance, drop] = [constantCurrent.compliance.value, constantCurrent.drop.value];
  const [top, bottom] = [compliance - drop - lineDrop - high, low - biased.saturation.value];
  if (!gives(top, swing.top) || !gives(bottom, swing.bottom)) return comparison(judged);
  const volts = (value: number) => showQuantity('voltage', value, showing);
  return [
    {
      formula: 'top = compliance − source drop − I · R_line − highest bias',
      substituted: `top = ${volts(compliance)} − ${volts(drop)} − ${volts(lineDrop)} − ${volts(high)} = ${volts(swing.top)}`,
    },
    {
      formula: 'bottom = lowest bias − saturation',
      substituted: `bottom = ${volts(low)} − ${volts(biased.saturation.value)} = ${volts(swing.bottom)}`,
    },
  ];
};
