import {
  type DesignedMachine,
  type MapMeeting,
  operatingRange,
  parseQuantity,
  Refusal,
  type Showing,
  showQuantity,
  showSpan,
  speedMap,
  trainAtSpeed,
} from '@soundpost/core';
import { atSpeedTables, markupOf, Openings, speedMapDrawing, svg } from '@soundpost/documents';
import { speedQuantity } from './speed-range.ts';
import type { HeldAnswer, SpeedAsked } from './views.ts';

const meetingsOf = new WeakMap<DesignedMachine, readonly MapMeeting[]>();

/** What the machine does at the speed a hand holds or typed; a text that is no speed is refused in words. */
export function heldSpeed(machine: DesignedMachine, asked: SpeedAsked, showing: Showing): HeldAnswer {
  const set = tablesAt(machine, asked, showing);
  if ('refused' in set) return set;
  const { at, held, tables } = set;
  const map = (width: 'wide' | 'narrow') => {
    const drawn = speedMapDrawing(machine, showing, width, held);
    return drawn === undefined ? undefined : markupOf(svg(drawn, `speeds-${width}`));
  };
  return {
    at,
    shown: showQuantity(speedQuantity(machine), at, showing),
    outside: outside(machine, at, showing),
    map: map('wide'),
    narrowMap: map('narrow'),
    lines: markupOf(tables.lines),
    close: markupOf(tables.close),
    meetings: markupOf(tables.meetings),
  };
}

/** What the numbers of those tables open to. */
export function heldOpenings(machine: DesignedMachine, asked: SpeedAsked, showing: Showing): Openings | undefined {
  const set = tablesAt(machine, asked, showing);
  return 'refused' in set ? undefined : set.openings;
}

function tablesAt(machine: DesignedMachine, asked: SpeedAsked, showing: Showing) {
  const at = speedOf(machine, asked, showing);
  if (typeof at !== 'number') return at;
  const held = trainAtSpeed(machine.stated.train, at, {
    coincidences: machine.coincidences,
    meetings: meetings(machine),
  });
  const openings = new Openings();
  return { at, held, openings, tables: atSpeedTables(machine, held, { showing, opens: openings.opens }) };
}

function speedOf(machine: DesignedMachine, asked: SpeedAsked, showing: Showing): number | { refused: string } {
  if ('at' in asked) return asked.at;
  try {
    const speed: number = parseQuantity(asked.typed, speedQuantity(machine), { decimal: showing.decimal ?? 'point' });
    return speed > 0 ? speed : { refused: 'A machine that stands still makes no lines: type a speed above zero.' };
  } catch (error) {
    if (error instanceof Refusal) return { refused: error.message };
    throw error;
  }
}

function meetings(machine: DesignedMachine): readonly MapMeeting[] {
  const before = meetingsOf.get(machine);
  if (before !== undefined) return before;
  const map = speedMap(machine.stated.train);
  const found = map.known ? map.value.meetings : [];
  meetingsOf.set(machine, found);
  return found;
}

function outside(machine: DesignedMachine, at: number, showing: Showing): string | undefined {
  const range = operatingRange(machine.stated.train);
  if (!range.known) return undefined;
  const { low, high } = range.value;
  if (at >= low && at <= high) return undefined;
  return `Outside the stated range, ${showSpan(speedQuantity(machine), { low, high } as never, showing)}: the machine is not said to run there, and coincidences were not looked for.`;
}
