import { clause, jcgm100, jcgm101 } from '../../source/index.ts';
import { distribution } from './distribution.ts';

/** U-shaped (arc sine) of half-width a, as a sine passes through its values: u = a/√2. */
export const uShapedDistribution = distribution({
  kind: 'u-shaped',
  title: 'U-shaped (arc sine): a cycle that dwells at its ends',
  alsoCalled: ['arcsine', 'arc-sine'],
  statedBy: ['half-width', 'standard-uncertainty'],
  divisor: Math.SQRT2,
  standardDeviation: ({ standardUncertainty }) => standardUncertainty,
  deviations: ({ standardUncertainty }, random) => {
    const a = standardUncertainty * Math.SQRT2;
    return () => a * Math.sin(2 * Math.PI * random.uniform());
  },
  sources: [clause(jcgm100, 'H.1.3.4'), clause(jcgm101, '6.4.6', 'from memory')],
});
