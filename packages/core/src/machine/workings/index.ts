import type { AnyWorking } from '../../working/index.ts';
import { beltPass } from './belt.ts';
import { bladeVane } from './blade-vane.ts';
import { gearMesh } from './gear-mesh.ts';
import { inductionMotorFrequencies } from './induction-motor.ts';
import { planetaryGear } from './planetary-gear.ts';
import { reciprocatingOrders } from './reciprocating-orders.ts';
import { rollingBearingFrequencies } from './rolling-bearing-frequencies.ts';
import { toothedLoop } from './toothed-loop.ts';
import { wormGear } from './worm-gear.ts';

/** The calculations of this room. */
export const machineWorkings: readonly AnyWorking[] = [
  rollingBearingFrequencies,
  gearMesh,
  inductionMotorFrequencies,
  beltPass,
  planetaryGear,
  wormGear,
  toothedLoop,
  bladeVane,
  reciprocatingOrders,
];
