import { clause, jcgm100, jcgm101 } from '../../source/index.ts';
import { distribution } from './distribution.ts';

/** Rectangular (uniform) of half-width a: u = a/√3. */
export const rectangularDistribution = distribution({
  kind: 'rectangular',
  title: 'Rectangular: anywhere between its ends with equal probability',
  alsoCalled: ['uniform'],
  statedBy: ['half-width', 'standard-uncertainty'],
  divisor: Math.sqrt(3),
  standardDeviation: ({ standardUncertainty }) => standardUncertainty,
  deviations: ({ standardUncertainty }, random) => {
    const a = standardUncertainty * Math.sqrt(3);
    return () => a * (2 * random.uniform() - 1);
  },
  sources: [clause(jcgm100, '4.3.7'), clause(jcgm101, '6.4.2', 'from memory')],
});
