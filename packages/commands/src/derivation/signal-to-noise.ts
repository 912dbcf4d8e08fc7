import {
  type Level,
  motionOrder,
  type Prediction,
  type QuantityName,
  type Showing,
  showDecibels,
  showLevel,
  showNumber,
  showPercent,
  showQuantity,
  visibility,
} from '@soundpost/core';
import { comparison } from './comparison.ts';
import type { Derivation, Derive } from './derivation.ts';

/** Noise in the line or band of the target, the ratio, and what it does to the reading. */
export const signalToNoiseDerivation: Derive = (judged) => {
  const { prediction, target, showing } = judged;
  const seen = target === undefined ? undefined : visibility(target, prediction);
  if (target === undefined || seen?.known !== true || !prediction.noise.known) return comparison(judged);
  const { signal, noise, decibels, bandwidth } = seen.value;
  const { senses } = prediction.chain.transducer;
  const k = motionOrder[senses] - motionOrder[target.motion];
  const noiseText = showLevel(noise, showing);
  const density = (f: number, of: (frequency: number) => number) =>
    showQuantity(`${senses} density` as QuantityName, of(f), showing);
  const inLine = 'line' in bandwidth;
  const place = inLine ? bandwidth.line : Math.sqrt(bandwidth.low * bandwidth.high);
  const first: Derivation = inLine
    ? {
        formula: 'n_line = n(f) · √(1.5 · Δf) / (2π · f)^k',
        substituted: `n_line = ${density(place, prediction.noise.value)} · √(1.5 · ${showQuantity('frequency', bandwidth.spacing, showing)}) / (2π · ${showQuantity('frequency', place, showing)})^${k} = ${noiseText}`,
        notes: shareNotes(prediction, place, showing),
      }
    : {
        formula: 'n_band = √(∫ (n(f) / (2π · f)^k)² df)',
        substituted: `n_band = √(∫ … df, ${showQuantity('frequency', bandwidth.low, showing)} to ${showQuantity('frequency', bandwidth.high, showing)}), k = ${k}, = ${noiseText}`,
        notes: shareNotes(prediction, place, showing),
      };
  return [
    first,
    {
      formula: 'ratio = 20 · lg(s / n)',
      substituted: `ratio = 20 · lg(${showLevel(signal, showing)} / ${bare(noise, showing)}) = ${showDecibels(decibels)}`,
    },
    ...added(judged, decibels),
  ];
};

/** To an overall value noise adds as squares. */
const added: (judged: Parameters<Derive>[0], decibels: number) => readonly Derivation[] = (
  { judgement, showing },
  decibels,
) => {
  const { found } = judgement;
  if (typeof found === 'string' || found.is !== 'quantity') return [];
  const ratio = 10 ** (-decibels / 20);
  return [
    {
      formula: 'e = √(1 + (n / s)²) − 1',
      substituted: `e = √(1 + ${showNumber(ratio, 4, showing.decimal)}²) − 1 = ${showPercent(found.value, 4, showing.decimal)}`,
    },
  ];
};

function bare(level: Level, showing: Showing): string {
  const { band: _band, ...rest } = level;
  return showLevel(rest, showing);
}

/** Whose noise it is, at the frequency or the middle of the band. */
function shareNotes({ noiseOf, noise, chain }: Prediction, at: number, showing: Showing): readonly string[] {
  if (!noiseOf.known || !noise.known) return [];
  const whole = noise.value(at) ** 2;
  const { senses } = chain.transducer;
  return [
    `noise at ${showQuantity('frequency', at, showing)}, added as squares:`,
    ...noiseOf.value.map(({ stage, density }) => {
      const own = density(at);
      const share = whole > 0 ? own ** 2 / whole : 0;
      return `${showQuantity(`${senses} density` as QuantityName, own, showing)} from ${stage.name} (${stage.part}), ${showNumber(share * 100, 2, showing.decimal)} % of the power`;
    }),
  ];
}
