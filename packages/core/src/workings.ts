import { alarmWorkings } from './alarm/index.ts';
import { chainWorkings, proximityWorkings, tedsWorkings } from './chain/index.ts';
import { zoneWorkings } from './demand/zones/index.ts';
import { areaWorkings } from './hazardous-area/index.ts';
import { machineWorkings } from './machine/index.ts';
import { Broken, nearest, Refusal } from './quantity/index.ts';
import type { Room } from './rooms.ts';
import { spectrumSettings } from './signal/workings/spectrum-settings.ts';
import { vibrationConversion } from './signal/workings/vibration-conversion.ts';
import { windowProperties } from './signal/workings/window-properties.ts';
import { uncertaintyBudget } from './uncertainty/index.ts';
import { wiringWorkings } from './wiring/index.ts';
import type { AnyWorking } from './working/index.ts';

/** Every public formula of the house, by the room it belongs to, in the order of the rooms. */
export const workingsByRoom: readonly { readonly room: Room; readonly workings: readonly AnyWorking[] }[] = [
  { room: 'uncertainty', workings: [uncertaintyBudget] },
  { room: 'signal', workings: [vibrationConversion, windowProperties, spectrumSettings] },
  { room: 'machine', workings: machineWorkings },
  { room: 'demand', workings: zoneWorkings },
  { room: 'chain', workings: [...chainWorkings, ...proximityWorkings, ...tedsWorkings] },
  { room: 'hazardous-area', workings: areaWorkings },
  { room: 'wiring', workings: wiringWorkings },
  { room: 'alarm', workings: alarmWorkings },
];

/** Every public formula of the house. A name stands once. */
export const workings: readonly AnyWorking[] = once(workingsByRoom.flatMap((each) => each.workings));

function once(list: readonly AnyWorking[]): readonly AnyWorking[] {
  const names = new Set<string>();
  for (const { name } of list) {
    if (names.has(name)) throw new Broken('a working has a name of its own', { name });
    names.add(name);
  }
  return list;
}

/** The working of that name. Throws Refusal with the name nearest to it. */
export function workingCalled(name: string): AnyWorking {
  const found = workings.find((each) => each.name === name);
  if (found !== undefined) return found;
  const near = nearest(
    name,
    workings.map((each) => each.name),
  );
  throw new Refusal({
    read: name,
    expected: "the name of a working; 'soundpost workings' lists them",
    ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
  });
}
