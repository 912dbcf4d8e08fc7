import { clause, jcgm100, jcgm101 } from '../../source/index.ts';
import { distribution } from './distribution.ts';

/** Normal; an expanded uncertainty U of coverage factor k gives u = U/k. */
export const normalDistribution = distribution({
  kind: 'normal',
  title: 'Normal (Gaussian)',
  statedBy: ['standard-uncertainty', 'expanded'],
  standardDeviation: ({ standardUncertainty }) => standardUncertainty,
  deviations: ({ standardUncertainty: u }, random) => {
    return () => u * random.normal();
  },
  commonFactor: () => () => 1,
  sources: [clause(jcgm100, '4.3.3', 'from memory'), clause(jcgm101, '6.4.7', 'from memory')],
});
