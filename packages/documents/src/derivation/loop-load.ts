import { showQuantity } from '@soundpost/core';
import { comparison } from './comparison.ts';
import { type Derive, gives, marginDerivation } from './derivation.ts';

/** The resistance a loop may have at its failure current, and what is left. */
export const loopLoadDerivation: Derive = (judged) => {
  const { prediction, showing } = judged;
  const { loop, chain } = prediction;
  const minimum = chain.transducer.oneNumber?.minimumVoltage;
  if (!loop?.resistance.known || !loop.largestResistance.known || !loop.spare.known || !minimum?.known) {
    return comparison(judged);
  }
  const volts = (value: number) => showQuantity('voltage', value, showing);
  const ohms = (value: number) => showQuantity('resistance', value, showing);
  const current = showQuantity('current', loop.failureCurrent, showing);
  const supply = loop.largestResistance.value * loop.failureCurrent + minimum.value;
  const left = supply - minimum.value - loop.failureCurrent * loop.resistance.value;
  if (!gives(left, loop.spare.value)) return comparison(judged);
  return [
    {
      formula: 'R_max = (V_supply − V_min) / I_failure',
      substituted: `R_max = (${volts(supply)} − ${volts(minimum.value)}) / ${current} = ${ohms(loop.largestResistance.value)}`,
      notes: ['V_supply is the lowest supply voltage, V_min the least the sensor needs, I_failure the failure current'],
    },
    {
      formula: 'spare = V_supply − V_min − I_failure · R',
      substituted: `spare = ${volts(supply)} − ${volts(minimum.value)} − ${current} · ${ohms(loop.resistance.value)} = ${volts(loop.spare.value)}`,
    },
    ...marginDerivation(judged, ohms(loop.largestResistance.value), ohms(loop.resistance.value)),
  ];
};
