import type { PlantSession } from '../plant-session.ts';
import type { BuildingAsked, Built } from './building-views.ts';
import { yamlScalar } from './statement-edits.ts';

/** States what a point is there to listen to, in the order of the train; all of it is what an absent list says. */
export function heard(
  { machine, point, hears }: Extract<BuildingAsked, { readonly act: 'hear' }>,
  session: PlantSession,
): Built {
  const stated = session.machine(machine)?.stated;
  const found = stated?.points.find((each) => each.statement.name === point);
  if (stated === undefined || found === undefined) return { refused: `${machine} has no measuring point '${point}'.` };
  const { shafts, elements } = stated.train;
  const names = [...new Set([...shafts, ...elements.map((each) => each.name)])];
  const lost = hears.find((each) => !names.includes(each));
  if (lost !== undefined) return { refused: `${machine} has neither a shaft nor an element '${lost}'.` };
  const own = names.filter((each) => hears.includes(each));
  const path = ['machines', machine, 'points', point, 'hears'];
  if (own.length === 0) {
    return {
      label: `${point} listens to the whole train`,
      edits: found.statement.hears === undefined ? [] : [{ path, yaml: undefined }],
      takesAlong: [],
      unsettles: [],
    };
  }
  return {
    label: `${point} listens to ${own.join(', ')}`,
    edits: [{ path, yaml: `[${own.map(yamlScalar).join(', ')}]` }],
    takesAlong: [],
    unsettles: [],
  };
}
