import { clause, jcgm101, jcgm102 } from '../../source/index.ts';
import type { Random } from '../random.ts';
import { type DegreesOfFreedom, distribution } from './distribution.ts';

/**
 * Student's t scaled by u, for a mean of few readings or a certificate with few degrees of freedom. Drawn numbers
 * scatter by u·√(ν/(ν − 2)), which does not exist for ν ≤ 2.
 */
export const studentTDistribution = distribution({
  kind: 'student-t',
  title: "Student's t: the standard uncertainty comes from few readings",
  alsoCalled: ['t', 'student'],
  statedBy: ['standard-uncertainty', 'expanded'],
  needsDegreesOfFreedom: true,
  standardDeviation: ({ standardUncertainty: u, degreesOfFreedom: nu }) =>
    nu === 'infinite' ? u : nu > 2 ? u * Math.sqrt(nu / (nu - 2)) : undefined,
  deviations: ({ standardUncertainty: u, degreesOfFreedom }, random) => {
    const factor = heavierTails(degreesOfFreedom, random);
    return () => u * random.normal() * factor();
  },
  commonFactor: heavierTails,
  sources: [clause(jcgm101, '6.4.9', 'from memory'), clause(jcgm102, '5.3.2')],
});

/** √(ν/χ²): times a normal number it gives Student's t; shared by several, the joint t of simultaneous readings. */
function heavierTails(nu: DegreesOfFreedom, random: Random): () => number {
  return nu === 'infinite' ? () => 1 : () => Math.sqrt(nu / random.chiSquare(nu));
}
