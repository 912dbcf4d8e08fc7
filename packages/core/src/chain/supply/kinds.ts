import { kinds } from '../../quantity/kinds.ts';
import type { Part } from '../part-kind.ts';
import { loopSupply } from './loop-supply.ts';
import { seriesResistance } from './series-resistance.ts';

/** Every kind of supply and of series element. */
export const supplyKinds = kinds(loopSupply, seriesResistance);
export type Supply = {
  [K in (typeof supplyKinds)[number] as K['kind']]: Part<K>;
}[(typeof supplyKinds)[number]['kind']];
