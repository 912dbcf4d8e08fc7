import { clause, jcgm101 } from '../../source/index.ts';
import { distribution } from './distribution.ts';

/**
 * Rectangular of half-width w whose ends are themselves known only within ±d: u² = w²/3 + d²/9. Drawn by first drawing
 * the ends, both moved by the same amount about the fixed middle.
 */
export const curvilinearTrapezoidDistribution = distribution({
  kind: 'curvilinear-trapezoid',
  title: 'Curvilinear trapezoid: rectangular with ends that are not exactly known',
  statedBy: ['half-width', 'standard-uncertainty'],
  divisor: Math.sqrt(3),
  inexactEnds: true,
  standardDeviation: ({ standardUncertainty }) => standardUncertainty,
  deviations: ({ standardUncertainty: u, inexactness: d }, random) => {
    const w = Math.sqrt(Math.max(0, 3 * (u * u - (d * d) / 9)));
    return () => (w + d * (2 * random.uniform() - 1)) * (2 * random.uniform() - 1);
  },
  sources: [clause(jcgm101, '6.4.3', 'from memory')],
});
