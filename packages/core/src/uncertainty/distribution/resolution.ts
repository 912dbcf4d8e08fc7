import { clause, jcgm100 } from '../../source/index.ts';
import { distribution } from './distribution.ts';

/** The last digit r of an indication: rectangular of half-width r/2, so u = r/√12. */
export const resolutionDistribution = distribution({
  kind: 'resolution',
  title: 'Resolution: rectangular over one step of the indication',
  statedBy: ['resolution'],
  divisor: Math.sqrt(12),
  standardDeviation: ({ standardUncertainty }) => standardUncertainty,
  deviations: ({ standardUncertainty }, random) => {
    const r = standardUncertainty * Math.sqrt(12);
    return () => r * (random.uniform() - 0.5);
  },
  sources: [clause(jcgm100, 'F.2.2.1')],
});
