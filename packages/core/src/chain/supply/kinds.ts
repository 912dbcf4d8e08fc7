import { kinds } from '../../quantity/kinds.ts';
import type { Part } from '../part-kind.ts';
import { galvanicIsolatorIepe } from './galvanic-isolator-iepe.ts';
import { galvanicIsolatorLoop } from './galvanic-isolator-loop.ts';
import { junctionBox } from './junction-box.ts';
import { loopSupply } from './loop-supply.ts';
import { seriesResistance } from './series-resistance.ts';
import { shuntDiodeBarrier } from './shunt-diode-barrier.ts';

/** Every kind of part that may stand in the line: supplies, resistances, boxes, barriers, isolators. */
export const supplyKinds = kinds(
  loopSupply,
  seriesResistance,
  junctionBox,
  shuntDiodeBarrier,
  galvanicIsolatorIepe,
  galvanicIsolatorLoop,
);
export type Supply = {
  [K in (typeof supplyKinds)[number] as K['kind']]: Part<K>;
}[(typeof supplyKinds)[number]['kind']];
