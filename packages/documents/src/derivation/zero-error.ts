import { level, showDecibels, showLevel, showPercent, showQuantity } from '@soundpost/core';
import { comparison } from './comparison.ts';
import type { Derive } from './derivation.ts';

/** What a detecting sensor reads on a machine that stands still. */
export const zeroErrorDerivation: Derive = (judged) => {
  const { prediction, judgement, target, showing } = judged;
  const sensor = prediction.chain.transducer.oneNumber;
  if (!sensor?.range.known || !sensor.zeroError.known || !target?.smallest.known) return comparison(judged);
  const { quantity, value, detector } = sensor.range.value;
  const zero = level(quantity, value * sensor.zeroError.value, detector);
  const smallest = target.smallest.value;
  return [
    {
      formula: 'zero error = range · error of the zero',
      substituted: `zero error = ${showLevel(sensor.range.value, showing)} · ${showPercent(sensor.zeroError.value, 3, showing.decimal).replace('+', '')} = ${showLevel(zero, showing)}`,
    },
    ...(judgement.margin === undefined
      ? []
      : [
          {
            formula: 'margin = 20 · lg(smallest level / zero error)',
            substituted: `margin = 20 · lg(${showQuantity(smallest.quantity, smallest.value, showing)} / ${showQuantity(quantity, zero.value, showing)}) = ${showDecibels(judgement.margin)}`,
          },
        ]),
  ];
};
