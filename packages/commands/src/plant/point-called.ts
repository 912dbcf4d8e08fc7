import {
  type DesignedMachine,
  type DesignedPoint,
  nearest,
  type Plant,
  type PlantMachine,
  type PlantPoint,
  Refusal,
  type Target,
} from '@soundpost/core';

export interface FoundPoint {
  readonly machine: PlantMachine;
  readonly point: PlantPoint;
  /** `P-301/pump-drive-end-horizontal`. */
  readonly of: string;
}

/** The point of that name: `P-301/pump-drive-end-horizontal`, or without its machine where one has it. Throws Refusal. */
export function pointCalled(plant: Plant, name: string): FoundPoint {
  const points = plant.machines.flatMap((machine) =>
    machine.points.map((point) => ({ machine, point, of: `${machine.name}/${point.statement.name}` })),
  );
  const matching = points.filter((each) => each.of === name || each.point.statement.name === name);
  const [only] = matching;
  if (only !== undefined && matching.length === 1) return only;
  if (matching.length > 1) {
    throw new Refusal({ read: name, expected: `one point: ${matching.map((each) => each.of).join(' or ')}` });
  }
  throw unknownName(
    name,
    'a measuring point of this plant',
    points.map((each) => each.of),
    points.map((each) => each.point.statement.name),
  );
}

/** The machine of that name. Throws Refusal. */
export function designedPointCalled(
  machines: readonly DesignedMachine[],
  of: string,
): { readonly machine: DesignedMachine; readonly point: DesignedPoint } {
  for (const machine of machines) {
    const point = machine.points.find((each) => each.point.of === of);
    if (point !== undefined) return { machine, point };
  }
  throw unknownName(
    of,
    'a measuring point of this plant',
    machines.flatMap((machine) => machine.points.map((point) => point.point.of)),
  );
}

export function targetCalled(targets: readonly Target[], name: string): Target {
  const found = targets.find((each) => each.name === name);
  if (found !== undefined) return found;
  throw unknownName(
    name,
    'a target of this point',
    targets.map((each) => each.name),
  );
}

const mostNames = 12;

/** Says what there is, and which of it was probably meant. */
export function unknownName(
  read: string,
  expected: string,
  names: readonly string[],
  others: readonly string[] = [],
): Refusal {
  const near = nearest(read, [...names, ...others]);
  const shown = names.slice(0, mostNames).map((name) => `'${name}'`);
  const rest = names.length > mostNames ? ` and ${names.length - mostNames} more` : '';
  const list = names.length === 0 ? ' (there is none)' : `: ${shown.join(', ')}${rest}`;
  return new Refusal({
    read,
    expected: `${expected}${list}`,
    ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
  });
}
