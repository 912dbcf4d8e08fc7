import { showQuantity } from '@soundpost/core';
import { comparison } from './comparison.ts';
import { type Derive, marginDerivation } from './derivation.ts';

/** The frequency up to which the current that is left charges the cable. */
export const cableDriveDerivation: Derive = (judged) => {
  const { prediction, judgement, target, showing } = judged;
  const { drive } = prediction;
  const { found } = judgement;
  if (drive?.known !== true || typeof found === 'string' || found.is !== 'quantity') return comparison(judged);
  const { current, capacitance } = drive.value;
  const peak = current / (2 * Math.PI * capacitance * found.value);
  const limit = showQuantity('frequency', found.value, showing);
  const top = target?.band.known === true ? showQuantity('frequency', target.band.value.high, showing) : undefined;
  return [
    {
      formula: 'f = I / (2π · C · V_peak)',
      substituted: `f = ${showQuantity('current', current, showing)} / (2π · ${showQuantity('capacitance', capacitance, showing)} · ${showQuantity('voltage', peak, showing)}) = ${limit}`,
      notes: ['I is what is left to drive the cable, C all of its capacitance'],
    },
    // Beyond 60 dB a margin says no more than 'plenty'.
    ...(top === undefined || (judgement.margin ?? 60) >= 60 ? [] : marginDerivation(judged, limit, top)),
  ];
};
