import {
  type Band,
  type Level,
  lostInNoise,
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
import type { Derivation, Derive, Judged } from './derivation.ts';

/** Noise in the line or band of the target, the ratio, and what it does to the reading. */
export const signalToNoiseDerivation: Derive = (judged) => {
  const { prediction, target, showing } = judged;
  const seen = target === undefined ? undefined : visibility(target, prediction);
  if (target === undefined || seen?.known !== true || !prediction.residual.known) return comparison(judged);
  const { signal, noise, decibels, bandwidth } = seen.value;
  if (decibels <= lostInNoise) return comparison(judged);
  const place = 'line' in bandwidth ? bandwidth.line : Math.sqrt(bandwidth.low * bandwidth.high);
  const k = motionOrder[prediction.chain.transducer.senses] - motionOrder[target.motion];
  const residual = prediction.residual.value(place) / (2 * Math.PI * place) ** k;
  const broad = { ...noise, value: Math.sqrt(Math.max(0, noise.value ** 2 - residual ** 2)) };
  const spread = 'line' in bandwidth ? inLine(judged, bandwidth, k, broad) : inBand(judged, bandwidth, k, broad);
  if (spread === undefined) return comparison(judged);
  return [
    { ...spread, notes: shareNotes(prediction, place, showing) },
    ...together(judged, broad, residual, noise),
    {
      formula: 'ratio = 20 · lg(s / n)',
      substituted: `ratio = 20 · lg(${showLevel(signal, showing)} / ${bare(noise, showing)}) = ${showDecibels(decibels)}`,
    },
    ...added(judged, decibels),
  ];
};

/** Broad-band noise in one line; nothing where the formula would not give what was found. */
function inLine(
  { prediction, showing }: Judged,
  { line, spacing }: { readonly line: number; readonly spacing: number },
  k: number,
  found: Level,
): Derivation | undefined {
  if (!prediction.noise.known) return undefined;
  const density = prediction.noise.value(line);
  const computed = (density * Math.sqrt(1.5 * spacing)) / (2 * Math.PI * line) ** k;
  // Beside a large residual the rest is known to fewer digits.
  if (Math.abs(computed - found.value) > 1e-3 * computed) return undefined;
  const hertz = (value: number) => showQuantity('frequency', value, showing);
  const integrated = k === 0 ? '' : ` / (2π · ${hertz(line)})^${k}`;
  return {
    formula: k === 0 ? 'n_line = n(f) · √(1.5 · Δf)' : 'n_line = n(f) · √(1.5 · Δf) / (2π · f)^k',
    substituted: `n_line = ${densityText(prediction, density, showing)} · √(1.5 · ${hertz(spacing)})${integrated} = ${showLevel(found, showing)}`,
  };
}

function inBand({ showing }: Judged, { low, high }: Band, k: number, found: Level): Derivation {
  const hertz = (value: number) => showQuantity('frequency', value, showing);
  return {
    formula: k === 0 ? 'n_band = √(∫ n(f)² df)' : 'n_band = √(∫ (n(f) / (2π · f)^k)² df)',
    substituted: `n_band = √(∫ … df, ${hertz(low)} to ${hertz(high)})${k === 0 ? '' : `, k = ${k},`} = ${bare(found, showing)}`,
  };
}

/** What may all lie in the line, run-out for one, is added to the broad-band noise as squares. */
function together(
  { prediction, showing }: Judged,
  broad: Level,
  residual: number,
  whole: Level,
): readonly Derivation[] {
  if (residual === 0) return [];
  const { stages } = prediction.chain;
  const of = stages.known ? stages.value.filter((stage) => (stage.residual ?? 0) > 0) : [];
  const rest = showQuantity(whole.quantity, residual, showing);
  return [
    {
      formula: 'n = √(n_broad² + n_rest²)',
      substituted: `n = √((${showQuantity(broad.quantity, broad.value, showing)})² + (${rest})²) = ${bare(whole, showing)}`,
      notes: of.map((stage) => `n_rest may all lie in one line: ${stage.name} (${stage.part})`),
    },
  ];
}

function densityText({ chain }: Prediction, density: number, showing: Showing): string {
  return showQuantity(`${chain.transducer.senses} density` as QuantityName, density, showing);
}

/** To an overall value noise adds as squares. */
function added({ judgement, showing }: Judged, decibels: number): readonly Derivation[] {
  const { found } = judgement;
  if (typeof found === 'string' || found.is !== 'quantity') return [];
  const ratio = 10 ** (-decibels / 20);
  return [
    {
      formula: 'e = √(1 + (n / s)²) − 1',
      substituted: `e = √(1 + ${showNumber(ratio, 4, showing.decimal)}²) − 1 = ${showPercent(found.value, 4, showing.decimal)}`,
    },
  ];
}

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
