import { Broken } from '../quantity/index.ts';
import type { Random } from '../uncertainty/random.ts';
import { inverseRealTransform, nextPowerOfTwo, tabulated } from './spectral.ts';

/** A density told at points, as a response is: a chain adds up its stages at every frequency it is asked for. */
export function tabulatedDensity(
  density: (frequency: number) => number,
  low: number,
  high: number,
): (frequency: number) => number {
  const at = tabulated((frequency) => ({ re: density(frequency), im: 0 }), low, high, 200);
  return (frequency) => at(frequency).re;
}

/**
 * Normal noise of a one-sided density n(f) in units per √Hz: every line of a transform longer than the record drawn with
 * variance n²·R·N/2 shared by both parts (power of a line n²·R/N), then transformed back. Line 0 is left out.
 */
export function noiseRecord(
  samples: number,
  rate: number,
  density: (frequency: number) => number,
  random: Random,
): Float64Array {
  const length = nextPowerOfTwo(samples);
  const half = length >> 1;
  const resolution = rate / length;
  const [re, im] = [new Float64Array(half + 1), new Float64Array(half + 1)];
  for (let k = 1; k < half; k++) {
    const own = density(k * resolution);
    // Drawn also where the density is nothing, so that one band more does not change the others.
    const [a, b] = [random.normal(), random.normal()];
    const spread = (own * Math.sqrt(rate * length)) / 2;
    re[k] = a * spread;
    im[k] = b * spread;
  }
  const record = inverseRealTransform(length)({ re, im });
  if (!Number.isFinite(record[0]!)) throw new Broken('a noise density is finite', { samples, rate });
  return record.slice(0, samples);
}
