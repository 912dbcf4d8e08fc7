import { type ShortlistRow, shortlist } from '../selection/shortlist.ts';
import type { DesignedPoint } from './design.ts';
import type { Plant } from './plant.ts';

/** Every candidate a point compares, against its targets, best first; none where the way to its input is not stated. */
export function pointShortlist(plant: Plant, { stated, point }: DesignedPoint): readonly ShortlistRow[] {
  if (stated.way === undefined) return [];
  return shortlist(point, stated.compared.transducers, stated.compared.mounts, stated.way, plant.policy);
}
