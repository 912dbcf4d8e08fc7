import {
  type Band,
  Broken,
  type Curve,
  choiceField,
  type Level,
  level,
  levelField,
  type Motion,
  quantityField,
  Refusal,
  spanField,
} from '../../quantity/index.ts';
import { screeningRules } from '../../source/screening-rules.ts';
import { clause } from '../../source/source.ts';
import { output, working } from '../../working/index.ts';
import { aboveZero } from './above-zero.ts';

/**
 * Noise density at a frequency from the points of a data sheet: a straight line on log-log paper between points; below
 * the first point its first slope goes on; above the last point its value stays. One point is white noise.
 */
export function densityAt(curve: Curve, frequency: number): number {
  aboveZero({ frequency });
  const { frequencies, densities } = curve;
  const last = frequencies.length - 1;
  if (last < 0) throw new Refusal({ read: 'a curve without points', expected: 'at least one point' });
  if (last === 0 || frequency >= frequencies[last]!) return densities[last]!;
  let right = frequencies.findIndex((each) => each > frequency);
  if (right === 0) right = 1;
  const [f1, f2, n1, n2] = [frequencies[right - 1]!, frequencies[right]!, densities[right - 1]!, densities[right]!];
  return n1 * (frequency / f1) ** (Math.log(n2 / n1) / Math.log(f2 / f1));
}

export type Integrations = 0 | 1 | 2;

/** Panels per decade before refinement: narrow enough to meet a resonance of quality 20 with several points. */
const panelsPerDecade = 16;
/** A panel halved this often is narrower than a corner of any curve matters for. */
const deepest = 12;

/**
 * Rms of noise in a band, integrated k times: √(∫ (n(f)/(2πf)^k)² df). Simpson's rule in ln f, each panel halved until
 * halving no longer matters (1e-6 of the whole), so that corners of a density given by points are met. Zero for a band
 * of no width; refuses a band that does not start above zero.
 */
export function bandNoise(
  density: (frequency: number) => number,
  low: number,
  high: number,
  integrations: Integrations = 0,
): number {
  aboveZero({ low });
  if (high < low) throw new Refusal({ read: `${low}..${high} Hz`, expected: 'a band from low to high' });
  if (high === low) return 0;
  const power = (u: number) => {
    const f = Math.exp(u);
    return (density(f) / (2 * Math.PI * f) ** integrations) ** 2 * f;
  };
  const [start, width] = [Math.log(low), Math.log(high / low)];
  const panels = Math.max(1, Math.ceil((width / Math.LN10) * panelsPerDecade));
  const nodes = Array.from({ length: 2 * panels + 1 }, (_, i) => power(start + (width * i) / (2 * panels)));
  const h = width / panels;
  const simpson = (a: number, m: number, b: number, step: number) => (step / 6) * (a + 4 * m + b);
  const whole = nodes.reduce((sum, value) => sum + value, 0) * (h / 2);
  if (!Number.isFinite(whole)) throw new Broken('a noise density is finite in its band', { low, high, integrations });

  const refined = (left: number, step: number, a: number, m: number, b: number, depth: number): number => {
    const coarse = simpson(a, m, b, step);
    const [lower, upper] = [power(left + step / 4), power(left + (3 * step) / 4)];
    const fine = simpson(a, lower, m, step / 2) + simpson(m, upper, b, step / 2);
    const allowed = 1e-6 * whole * (step / width);
    if (Math.abs(fine - coarse) <= 15 * allowed || depth >= deepest) return fine + (fine - coarse) / 15;
    return refined(left, step / 2, a, lower, m, depth + 1) + refined(left + step / 2, step / 2, m, upper, b, depth + 1);
  };

  let integral = 0;
  for (let panel = 0; panel < panels; panel++) {
    const [a, m, b] = [nodes[2 * panel]!, nodes[2 * panel + 1]!, nodes[2 * panel + 2]!];
    integral += refined(start + panel * h, h, a, m, b, 0);
  }
  return Math.sqrt(integral);
}

/**
 * Rms of noise in one line of a spectrum: n·√(B·Δf), with the noise bandwidth of the window B in lines, 1.5 for Hann.
 * Source: Harris 1978, Table I (from memory).
 */
export function lineNoise(density: number, resolution: number, noiseBandwidth = 1.5): number {
  aboveZero({ resolution, noiseBandwidth });
  return density * Math.sqrt(noiseBandwidth * resolution);
}

/** White noise in a band in closed form, k = 0, 1, 2: n√(f₂ − f₁), n/(2π)·√(1/f₁ − 1/f₂), n/(4π²)·√((1/f₁³ − 1/f₂³)/3). */
export function whiteBandNoise(density: number, band: Band, integrations: Integrations): number {
  aboveZero({ low: band.low });
  const { low, high } = band;
  const integral = [high - low, 1 / low - 1 / high, (low ** -3 - high ** -3) / 3][integrations]!;
  return (density / (2 * Math.PI) ** integrations) * Math.sqrt(integral);
}

const motionAfter: Readonly<Record<Integrations, Motion>> = { 0: 'acceleration', 1: 'velocity', 2: 'displacement' };

export const noiseInBand = working({
  name: 'noise-in-band',
  title: 'Noise of an accelerometer in a band, as acceleration, velocity or displacement',
  inputs: {
    density: quantityField('acceleration density', 'Noise density, the same over the band', {
      symbol: 'n',
      example: '3.5 ug/rtHz',
    }),
    band: spanField('frequency', 'Band', { symbol: 'band', example: '2..1000 Hz' }),
    integrations: choiceField(['0', '1', '2'], 'How often the signal is integrated', { symbol: 'k' }),
  },
  outputs: {
    noise: output(
      levelField(['acceleration', 'velocity', 'displacement'], 'Noise in the band', { symbol: 'u' }),
      'u = √(∫ (n/(2πf)^k)^2 df), f over band',
    ),
  },
  holds:
    'white over the band, steep band edges. Below a few hertz real noise rises, and integration makes that the larger part: use the curve of the data sheet there.',
  sources: [clause(screeningRules, 'band noise')],
  evaluate: ({ density, band, integrations }): { noise: Level<Motion> } => {
    if (!(band.high > band.low)) {
      throw new Refusal({
        read: `band=${band.low}..${band.high} Hz`,
        expected: 'a band of some width, from low to high',
      });
    }
    const k = Number(integrations) as Integrations;
    return {
      noise: level(motionAfter[k], whiteBandNoise(density, band, k), 'rms', { low: band.low, high: band.high }),
    };
  },
  example: { density: '3.5 ug/rtHz', band: '2..1000 Hz', integrations: '1' },
});
