import { kinds } from '../quantity/kinds.ts';
import { beltDrive } from './belt-drive.ts';
import { chainDrive } from './chain-drive.ts';
import { coupling } from './coupling.ts';
import { criticalSpeed } from './critical-speed.ts';
import type { AnyElementKind, ElementOf } from './element.ts';
import { fluidFilmBearing } from './fluid-film-bearing.ts';
import { frictionPair } from './friction-pair.ts';
import { gearPair } from './gear-pair.ts';
import { hydraulicTurbine } from './hydraulic-turbine.ts';
import { impeller } from './impeller.ts';
import { inductionMotor } from './induction-motor.ts';
import { phaseReference } from './phase-reference.ts';
import { planetaryStage } from './planetary-stage.ts';
import { reciprocatingMachine } from './reciprocating-machine.ts';
import { rollingBearing } from './rolling-bearing.ts';
import { screenExciter } from './screen-exciter.ts';
import { screwRotors } from './screw-rotors.ts';
import { structuralMode } from './structural-mode.ts';
import { synchronousMotor } from './synchronous-motor.ts';
import { timingBelt } from './timing-belt.ts';
import { wormPair } from './worm-pair.ts';

/** Every kind of machine element. */
export const machineElementKinds = kinds(
  inductionMotor,
  synchronousMotor,
  rollingBearing,
  fluidFilmBearing,
  gearPair,
  wormPair,
  planetaryStage,
  beltDrive,
  timingBelt,
  chainDrive,
  frictionPair,
  coupling,
  impeller,
  hydraulicTurbine,
  screwRotors,
  reciprocatingMachine,
  screenExciter,
  structuralMode,
  criticalSpeed,
  phaseReference,
);

export type MachineElement = ElementOf<(typeof machineElementKinds)[number]>;
export type MachineElementKindName = MachineElement['kind'];

const byKind = new Map<string, AnyElementKind>(machineElementKinds.map((each: AnyElementKind) => [each.kind, each]));

/** The kind of an element. */
export function kindOf(element: MachineElement): AnyElementKind {
  return byKind.get(element.kind)!;
}

/** The kind of that name, if there is one. */
export function elementKindCalled(kind: string): AnyElementKind | undefined {
  return byKind.get(kind);
}
