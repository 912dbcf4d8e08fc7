import type { Design, DesignedMachine, DesignedPoint } from '@soundpost/core';

/** A point with the machine it stands on. */
export interface PlacedPoint {
  readonly machine: DesignedMachine;
  readonly designed: DesignedPoint;
}

/** Every point of a plant, in the order of its file. */
export function everyPoint({ machines }: Design): readonly PlacedPoint[] {
  return machines.flatMap((machine) => machine.points.map((designed) => ({ machine, designed })));
}

/** The title a plant gives a machine, behind its name: `P-301, Raw-water pump`. */
export function machineTitle({ stated }: DesignedMachine): string {
  return stated.title === stated.name ? stated.name : `${stated.name}, ${stated.title}`;
}
