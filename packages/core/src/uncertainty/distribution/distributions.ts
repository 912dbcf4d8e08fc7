import { nearest, Refusal } from '../../quantity/index.ts';
import { curvilinearTrapezoidDistribution } from './curvilinear-trapezoid.ts';
import type { Distribution } from './distribution.ts';
import { normalDistribution } from './normal.ts';
import { rectangularDistribution } from './rectangular.ts';
import { resolutionDistribution } from './resolution.ts';
import { studentTDistribution } from './student-t.ts';
import { triangularDistribution } from './triangular.ts';
import { uShapedDistribution } from './u-shaped.ts';

/** Every shape of scatter a budget knows. */
export const distributions = [
  normalDistribution,
  rectangularDistribution,
  triangularDistribution,
  uShapedDistribution,
  resolutionDistribution,
  studentTDistribution,
  curvilinearTrapezoidDistribution,
] as const;

export type DistributionName = (typeof distributions)[number]['kind'];

const byName = new Map<string, Distribution<DistributionName>>(
  distributions.flatMap((each: Distribution<DistributionName>) =>
    [each.kind, ...(each.alsoCalled ?? [])].map((name) => [name, each] as const),
  ),
);

/** The distribution of that name, or of a name it also has. Throws Refusal. */
export function distributionNamed(name: string): Distribution<DistributionName> {
  const found = byName.get(name.trim().toLowerCase());
  if (found !== undefined) return found;
  const near = nearest(name, [...byName.keys()]);
  throw new Refusal({
    read: name,
    expected: `a distribution: ${distributions.map((each) => each.kind).join(', ')}`,
    ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
  });
}
