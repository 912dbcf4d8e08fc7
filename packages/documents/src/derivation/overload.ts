import { type Ceiling, level, seenBy, showLevel, showMeasure, showQuantity, worstPeak } from '@soundpost/core';
import { comparison } from './comparison.ts';
import { type Derivation, type Derive, gives, type Judged, marginDerivation } from './derivation.ts';

/** The sum of all shares of the worst peak against one ceiling. */
export const overloadDerivation: Derive = (judged) => {
  const { point, prediction, judgement, showing } = judged;
  const ceiling = prediction.ceilings.find(
    (each) => each.known && showMeasure(judgement.what).endsWith(` ${each.value.name}`),
  );
  if (ceiling === undefined) return comparison(judged);
  const worst = worstPeak(
    ceiling,
    seenBy(prediction.chain.transducer.reference, point.targets),
    point.disturbances,
    prediction.features,
  );
  if (!worst.known) return comparison(judged);
  const { shares, peak, ceiling: limit } = worst.value;
  const shown = (value: number) => showLevel(level(limit.motion, value, 'peak'), showing);
  const bare = (value: number) => showQuantity(limit.motion, value, showing);
  const sum: Derivation = {
    formula: 'worst peak = Σ of all largest levels, as if they met in phase',
    substituted: `worst peak = ${shares.map((each) => bare(each.peak)).join(' + ')} = ${shown(peak)}`,
    notes: shares.map((each) => `${shown(each.peak)} from ${each.name}`),
  };
  return [sum, ...ceilingDerivation(judged, limit), ...marginDerivation(judged, bare(limit.peak), bare(peak))];
};

/** An electrical ceiling is a voltage over the sensitivity. */
function ceilingDerivation({ prediction, showing }: Judged, { name, peak }: Ceiling): readonly Derivation[] {
  const { bias, chain } = prediction;
  const { senses } = chain.transducer;
  const [volts, sensitivity] = name.startsWith('swing')
    ? [swingOf(bias), chain.transducer.sensitivity]
    : [name === 'input range' ? peakOf(chain.input.peakVoltage) : undefined, chain.sensitivity];
  if (volts === undefined || !sensitivity.known || !gives(volts / sensitivity.value, peak)) return [];
  const unit = `voltage per ${senses}` as const;
  return [
    {
      formula: 'limit = voltage / sensitivity',
      substituted: `limit = ${showQuantity('voltage', volts, showing)} / ${showQuantity(unit, sensitivity.value, showing)} = ${showLevel(level(senses, volts / sensitivity.value, 'peak'), showing)}`,
    },
  ];
}

function swingOf(bias: Judged['prediction']['bias']): number | undefined {
  return bias?.known === true ? Math.max(0, Math.min(bias.value.swing.top, bias.value.swing.bottom)) : undefined;
}

function peakOf(peak: { readonly known: boolean; readonly value?: number } | undefined): number | undefined {
  return peak?.known === true ? peak.value : undefined;
}
