import { beltDrive } from './belt-drive.ts';
import { coupling } from './coupling.ts';
import type { AnyElementKind, ElementOf } from './element.ts';
import { kinds } from '../quantity/kinds.ts';
import { fluidFilmBearing } from './fluid-film-bearing.ts';
import { gearPair } from './gear-pair.ts';
import { impeller } from './impeller.ts';
import { inductionMotor } from './induction-motor.ts';
import { rollingBearing } from './rolling-bearing.ts';
import { synchronousMotor } from './synchronous-motor.ts';

/** Every kind of machine element. */
export const machineElementKinds = kinds(
  inductionMotor,
  synchronousMotor,
  rollingBearing,
  fluidFilmBearing,
  gearPair,
  beltDrive,
  coupling,
  impeller,
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
