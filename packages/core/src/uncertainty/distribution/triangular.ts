import { clause, jcgm100, jcgm101 } from '../../source/index.ts';
import { distribution } from './distribution.ts';

/** Symmetric triangular of half-width a: u = a/√6. */
export const triangularDistribution = distribution({
  kind: 'triangular',
  title: 'Triangular: the middle is likelier than the ends',
  statedBy: ['half-width', 'standard-uncertainty'],
  divisor: Math.sqrt(6),
  standardDeviation: ({ standardUncertainty }) => standardUncertainty,
  deviations: ({ standardUncertainty }, random) => {
    const a = standardUncertainty * Math.sqrt(6);
    return () => a * (random.uniform() + random.uniform() - 1);
  },
  sources: [clause(jcgm100, '4.3.9'), clause(jcgm101, '6.4.5', 'from memory')],
});
