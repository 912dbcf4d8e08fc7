import { movingEdits } from '@soundpost/files';
import type { PlantSession } from '../plant-session.ts';
import type { BuildingAsked, Built, Movable } from './building-views.ts';

const keys: Readonly<Record<Movable, string>> = { shaft: 'shafts', element: 'elements', point: 'points' };

/** One place earlier or later: the order is that of the drawing, of the tables and of what is printed. */
export function moved(
  { what, machine, name, by }: Extract<BuildingAsked, { readonly act: 'move' }>,
  session: PlantSession,
): Built {
  const stated = session.machine(machine)?.stated;
  const key = what === 'shaft' ? (stated?.train.shafts.indexOf(name) ?? -1) : name;
  const path = ['machines', machine, keys[what], key];
  const inMachine = key === -1 ? [] : movingEdits(session.machineText(machine), path, by);
  // What would be put there as a whole is the whole file, not the machine cut out of it.
  const edits = inMachine.some((each) => each.path.length < 2) ? movingEdits(session.text, path, by) : inMachine;
  if (edits.length === 0) return { refused: `${name} stands ${by < 0 ? 'first' : 'last'} already.` };
  return { label: `${name} one place ${by < 0 ? 'earlier' : 'later'}`, edits, takesAlong: [], unsettles: [] };
}
