import type { PowerDensity } from '../signal/measures/power-density.ts';

/** A line that stands out of what is around it. */
export interface SeenLine {
  /** In hertz, refined between the lines of the spectrum. */
  readonly frequency: number;
  /** Peak amplitude of a sine that would make it, in the unit of the record. */
  readonly amplitude: number;
  /** Amplitude over that of the noise around it. */
  readonly prominence: number;
}

/** A spectrum with what is usual around each of its lines. */
export interface LineSpectrum {
  readonly density: PowerDensity;
  readonly floor: Float64Array;
  /** Power over the floor that noise does not reach on any line of the record. */
  readonly stands: number;
}

const block = 16;
const around = 2;
/** Standard deviations (of a cube root) that no line of noise reaches, of some ten thousand. */
const deviations = 5.5;
/** Power over the floor below which no line is called one. */
const least = 9;

/**
 * The floor is the median of some eighty lines around. Noise averaged K times stays, on the cube-root scale, within so
 * many deviations √(1/(9K)) of its mean 1 − 1/(9K) (Wilson and Hilferty 1931, from memory).
 */
export function lineSpectrum(density: PowerDensity): LineSpectrum {
  const lines = density.density;
  const floor = new Float64Array(lines.length);
  for (let start = 0; start < lines.length; start += block) {
    const from = Math.max(1, start - around * block);
    const near = lines.slice(from, Math.min(lines.length, start + (around + 1) * block)).sort();
    floor.fill(near[near.length >> 1]!, start, start + block);
  }
  const ninth = 1 / (9 * Math.max(1, density.effectiveAverages));
  const middle = (1 - ninth) ** 3;
  const top = (1 - ninth + deviations * Math.sqrt(ninth)) ** 3;
  return { density, floor, stands: Math.max(least, top / middle) };
}

/** The highest line within a distance in hertz of a frequency, where it is a top that stands out. */
export function seenAt(spectrum: LineSpectrum, frequency: number, within: number): SeenLine | undefined {
  const { resolution, density } = spectrum.density;
  const from = Math.max(3, Math.floor((frequency - within) / resolution));
  const to = Math.min(density.length - 3, Math.ceil((frequency + within) / resolution));
  let best = -1;
  for (let k = from; k <= to; k++) if (best < 0 || density[k]! > density[best]!) best = k;
  if (best < 0 || !isTop(spectrum, best)) return undefined;
  const seen = lineAt(spectrum, best);
  return Math.abs(seen.frequency - frequency) <= within + resolution / 2 ? seen : undefined;
}

/** Every line that stands out, from the lowest up. */
export function linesSeen(spectrum: LineSpectrum): readonly SeenLine[] {
  const seen: SeenLine[] = [];
  for (let k = 3; k < spectrum.floor.length - 3; k++) if (isTop(spectrum, k)) seen.push(lineAt(spectrum, k));
  return seen;
}

function isTop({ density: { density }, floor, stands }: LineSpectrum, k: number): boolean {
  return density[k]! > stands * floor[k]! && density[k]! >= density[k - 1]! && density[k]! > density[k + 1]!;
}

/** Refined by a parabola through the logarithms of three lines: within a tenth of a line for a Hann window. */
function lineAt({ density: { density, resolution, noiseBandwidth }, floor }: LineSpectrum, k: number): SeenLine {
  const [left, middle, right] = [k - 1, k, k + 1].map((at) => Math.log(density[at]! + Number.MIN_VALUE)) as [
    number,
    number,
    number,
  ];
  const bend = left - 2 * middle + right;
  const off = bend < 0 ? Math.max(-0.5, Math.min(0.5, (0.5 * (left - right)) / bend)) : 0;
  return {
    frequency: (k + off) * resolution,
    amplitude: Math.sqrt(2 * density[k]! * noiseBandwidth),
    prominence: Math.sqrt(density[k]! / (floor[k]! + Number.MIN_VALUE)),
  };
}
