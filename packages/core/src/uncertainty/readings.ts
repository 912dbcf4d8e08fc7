import { Refusal } from '../quantity/index.ts';
import { type Contribution, contribution, meanAndDeviation } from './contribution.ts';
import type { Correlation } from './correlation.ts';

/**
 * Readings of several inputs taken at the same moments: their means, s/√n, and the correlation coefficients of the
 * means r = Σ(x − x̄)(y − ȳ)/√(Σ(x − x̄)²·Σ(y − ȳ)²). Source: JCGM 100, 5.2.3 and H.2. Throws Refusal.
 */
export function simultaneousReadings(lists: ReadonlyMap<string, readonly number[]>): {
  readonly inputs: readonly Contribution[];
  readonly correlations: readonly Correlation[];
} {
  const counts = [...lists].map(([name, list]) => `${name} ${list.length}`);
  if (new Set([...lists.values()].map((list) => list.length)).size > 1) {
    throw new Refusal({
      read: `readings: ${counts.join(', ')}`,
      expected: 'as many readings of each, since they were taken at the same moments',
      suggestion: "Readings taken apart belong to their own input, under 'inputs'.",
    });
  }
  const series = [...lists].map(([name, readings]) => ({
    input: contribution({ name, readings }),
    deviations: directionOf(readings),
  }));
  const correlations: Correlation[] = [];
  for (const [i, a] of series.entries()) {
    for (const b of series.slice(i + 1)) {
      const products = a.deviations.reduce((sum, each, n) => sum + each * b.deviations[n]!, 0);
      const coefficient = Math.max(-1, Math.min(1, products));
      correlations.push({ between: [a.input, b.input], coefficient, simultaneous: true });
    }
  }
  return { inputs: series.map((each) => each.input), correlations };
}

/** Deviations from the mean, of length 1 taken together; all zero where every reading is alike. */
function directionOf(readings: readonly number[]): readonly number[] {
  const { mean } = meanAndDeviation(readings);
  const largest = readings.reduce((most, each) => Math.max(most, Math.abs(each - mean)), 0);
  if (largest === 0) return readings.map(() => 0);
  const scaled = readings.map((each) => (each - mean) / largest);
  const length = Math.sqrt(scaled.reduce((sum, each) => sum + each * each, 0));
  return scaled.map((each) => each / length);
}
