import type { DesignedMachine, DesignedPoint, Plant, Showing } from '@soundpost/core';
import type { Explained } from '../derivation/explained.ts';
import { Openings } from '../derivation/opened.ts';
import { machineFacts } from '../machine/element-table.ts';
import { markupOf } from '../typesetting/html.ts';
import { runningSheets } from './machine-section.ts';
import { pointSheets } from './point-section.ts';

/** Every number of one sheet of a point, told in three depths in the order of the sheet; undefined where it has no such sheet. */
export function explainedPointSheet(
  designed: DesignedPoint,
  plant: Plant,
  name: string,
  showing: Showing,
): readonly Explained[] | undefined {
  const openings = new Openings();
  const sheet = pointSheets(designed, plant, 'point', { showing, opens: openings.opens }).find(
    (each) => each.name === name,
  );
  return sheet?.body() === undefined ? undefined : allOf(openings);
}

/** The names of the sheets of a point that hold numbers. */
export function pointSheetNames(designed: DesignedPoint, plant: Plant): readonly string[] {
  return pointSheets(designed, plant, 'point', { showing: {} })
    .filter(({ present, name }) => present && !['chart', 'candidates', 'response'].includes(name))
    .map(({ name }) => name);
}

/** Every number of a machine by itself: how it is run, its shafts and lines, what comes close, its limits. */
export function explainedMachine(machine: DesignedMachine, showing: Showing): readonly Explained[] {
  const openings = new Openings();
  const setting = { showing, opens: openings.opens };
  markupOf(machineFacts(machine, setting));
  for (const { body } of runningSheets(machine, setting)) markupOf(body);
  return allOf(openings);
}

/** Each once: two cells of a row may open to the same. */
function allOf(openings: Openings): readonly Explained[] {
  const all = Array.from({ length: openings.count }, (_, place) => openings.at(place)!);
  return [...new Map(all.map((each) => [`${each.title}\n${each.sentence}`, each])).values()];
}
