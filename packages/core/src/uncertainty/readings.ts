import { Refusal } from '../quantity/index.ts';
import { type Contribution, contribution, meanAndDeviation } from './contribution.ts';
import type { Correlation } from './correlation.ts';

/**
 * Readings of several inputs taken at the same moments: their means, s/√n, and the correlation coefficients of the
 * means r = Σ(x − x̄)(y − ȳ)/((n − 1)·s_x·s_y). Source: JCGM 100, 5.2.3 and H.2. Throws Refusal.
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
    deviations: standardised(readings),
  }));
  const correlations: Correlation[] = [];
  for (const [i, a] of series.entries()) {
    for (const b of series.slice(i + 1)) {
      const products = a.deviations.reduce((sum, each, n) => sum + each * b.deviations[n]!, 0);
      const coefficient = Math.max(-1, Math.min(1, products / (a.deviations.length - 1)));
      correlations.push({ between: [a.input, b.input], coefficient, simultaneous: true });
    }
  }
  return { inputs: series.map((each) => each.input), correlations };
}

/** Deviations from the mean in standard deviations; all zero where every reading is alike. */
function standardised(readings: readonly number[]): readonly number[] {
  const { mean, deviation } = meanAndDeviation(readings);
  return readings.map((each) => (deviation === 0 ? 0 : (each - mean) / deviation));
}
