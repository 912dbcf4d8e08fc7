import type { MeasuringChain } from '../chain/chain.ts';
import { type LifeEffect, lifeEffects } from '../chain/life-effects.ts';
import type { MeasuringPoint } from '../demand/measuring-point.ts';
import { type Missing, valueIfStated } from '../quantity/index.ts';

/** What surroundings do to the life of the chosen chain; where it cannot be told, what is missing for it. */
export interface PointLife {
  readonly effect: LifeEffect;
  readonly missing: readonly Missing[];
}

/** The effects to be feared at a point, and those that cannot be told of; what does not apply is left out. */
export function pointLife(point: MeasuringPoint, chain: MeasuringChain | undefined): readonly PointLife[] {
  if (chain === undefined) return [];
  const exposure = valueIfStated(point.surroundings.values.exposure);
  return lifeEffects.flatMap((effect) => {
    const applies = effect.applies(chain, exposure);
    if (!applies.known) return [{ effect, missing: applies.missing }];
    return applies.value ? [{ effect, missing: [] }] : [];
  });
}
