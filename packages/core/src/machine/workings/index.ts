import type { AnyWorking } from '../../working/index.ts';
import { beltPass } from './belt.ts';
import { gearMesh } from './gear-mesh.ts';
import { inductionMotorFrequencies } from './induction-motor.ts';
import { rollingBearingFrequencies } from './rolling-bearing-frequencies.ts';

/** The calculations of this room. */
export const machineWorkings: readonly AnyWorking[] = [
  rollingBearingFrequencies,
  gearMesh,
  inductionMotorFrequencies,
  beltPass,
];
