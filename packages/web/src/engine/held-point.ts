import {
  type DesignedMachine,
  type DesignedPoint,
  type Observable,
  observables,
  type Plant,
  type Showing,
} from '@soundpost/core';

/** All of a plant that a trial at one point reads. */
export interface TriedPlant {
  readonly catalogue: Plant['catalogue'];
  readonly policy: Plant['policy'];
}

export type TriedMachine = Pick<DesignedMachine, 'stated'>;

export type TriedPoint = Pick<DesignedPoint, 'stated' | 'point' | 'boundaries'>;

/** A point with the parts a hand may put there, as plain data that passes from one thread to another. */
export interface HeldPoint {
  readonly plant: TriedPlant;
  readonly machine: TriedMachine;
  readonly point: TriedPoint;
  readonly showing: Showing;
}

/**
 * Of the transducers only the one that stands there and the one it is swapped for: there may be hundreds, and one is not dragged to another. The
 * ways of looking at a motion travel by their names, because they have functions.
 */
export function packed(
  plant: Plant,
  machine: DesignedMachine,
  designed: DesignedPoint,
  showing: Showing,
  swapped?: string,
): HeldPoint {
  const { stated, point, boundaries } = designed;
  const { statement } = stated;
  const { transducers } = plant.catalogue;
  const standing = new Set([stated.chosen?.transducer.name, swapped]);
  const named = (of: Observable) => of.kind as unknown as Observable;
  return {
    plant: {
      catalogue: { ...plant.catalogue, transducers: transducers.filter((each) => standing.has(each.name)) },
      policy: plant.policy,
    },
    machine: { stated: { ...machine.stated, points: [] } },
    point: {
      stated: {
        ...stated,
        compared: { transducers: [], mounts: [] },
        statement: {
          ...statement,
          targets: statement.targets.map((each) => ({ ...each, observe: named(each.observe) })),
        },
      },
      point: { ...point, targets: point.targets.map((each) => ({ ...each, observable: named(each.observable) })) },
      boundaries,
    },
    showing,
  };
}

/** What was packed, whole again. */
export function unpacked(held: HeldPoint): HeldPoint {
  const { stated, point } = held.point;
  const { statement } = stated;
  return {
    ...held,
    point: {
      ...held.point,
      stated: {
        ...stated,
        statement: {
          ...statement,
          targets: statement.targets.map((each) => ({ ...each, observe: observableNamed(each.observe) })),
        },
      },
      point: {
        ...point,
        targets: point.targets.map((each) => ({ ...each, observable: observableNamed(each.observable) })),
      },
    },
  };
}

function observableNamed(name: unknown): Observable {
  const found = observables.find((each) => each.kind === name);
  if (found === undefined) throw new Error(`no way of looking at a motion is called ${String(name)}`);
  return found;
}
