import { nearest, type Plant, type PlantMachine, type PlantPoint, shortened } from '@soundpost/core';
import { saidBefore } from '@soundpost/files';

/** Which point a row speaks of: one of the plant, a new one under a machine, or none that can be told. */
export type PastePlace =
  | { readonly machine: PlantMachine; readonly name: string; readonly point: PlantPoint | undefined }
  | { readonly refused: string };

/** The point of a row from its cells under Machine and Point; `machine` is undefined where the table has no such column. */
export function pastePlace(plant: Plant, machine: string | undefined, point: string): PastePlace {
  const silent = silence('point', point) ?? (machine === undefined ? undefined : silence('machine', machine));
  if (silent !== undefined) return { refused: silent };
  if (machine !== undefined) return under(plant, machine, point);
  const cut = point.indexOf('/');
  if (cut > 0) return under(plant, point.slice(0, cut), point.slice(cut + 1));
  const found = plant.machines.flatMap((each) => {
    const of = pointOf(each, point);
    return of === undefined ? [] : [{ machine: each, name: point, point: of }];
  });
  if (found.length === 1) return found[0]!;
  if (found.length > 1) {
    const names = found.slice(0, 3).map((each) => each.machine.name);
    return { refused: `${names.join(' and ')} each have a point of this name. Add a column Machine.` };
  }
  const [only, ...others] = plant.machines;
  if (only !== undefined && others.length === 0) return named(only, point);
  return { refused: 'The plant has no point of this name, and no column says under which machine it would stand.' };
}

/** The point a row goes to by its place in the table of points; `of` is empty where the table has no more. */
export function placeOf(plant: Plant, of: string): PastePlace {
  if (of === '') return { refused: 'The table of points ends above this row.' };
  const machine = plant.machines.find(
    (each) => of.startsWith(`${each.name}/`) && pointOf(each, of.slice(each.name.length + 1)),
  );
  const point = machine && pointOf(machine, of.slice(machine.name.length + 1));
  if (machine === undefined || point === undefined)
    return { refused: `The plant has no point '${shortened(of, 80)}' any more.` };
  return { machine, name: point.statement.name, point };
}

function silence(of: string, cell: string): string | undefined {
  if (cell === '') {
    return `No name of a ${of} stands here. Names are not taken from the row above: fill cells that were merged.`;
  }
  const said = saidBefore(cell);
  if (said === undefined) return undefined;
  return said.says === 'refused' ? said.words : `'${cell}' is no name of a ${of}.`;
}

function under(plant: Plant, machine: string, point: string): PastePlace {
  const found = plant.machines.find((each) => each.name === machine);
  if (found !== undefined) return named(found, point);
  const near = nearest(
    machine,
    plant.machines.map((each) => each.name),
  );
  return {
    refused: `The plant has no machine '${shortened(machine, 40)}'. ${
      near === undefined ? 'A table makes points, not machines; add the machine first.' : `Did you mean '${near}'?`
    }`,
  };
}

function named(machine: PlantMachine, name: string): PastePlace {
  const point = pointOf(machine, name);
  if (point !== undefined) return { machine, name, point };
  const same = machine.points.find((each) => each.statement.name.toLowerCase() === name.toLowerCase());
  if (same !== undefined) {
    return { refused: `${machine.name} has '${same.statement.name}'. Write it the same way, or give another name.` };
  }
  if (name.length > 80 || name.includes('/')) {
    return { refused: "A name has at most 80 characters, and no '/'." };
  }
  return { machine, name, point: undefined };
}

function pointOf(machine: PlantMachine, name: string): PlantPoint | undefined {
  return machine.points.find((each) => each.statement.name === name);
}
