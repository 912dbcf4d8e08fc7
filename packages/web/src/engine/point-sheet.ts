import type { DesignedPoint, Plant, Showing } from '@soundpost/core';
import { markupOf, Openings, pointSheets } from '@soundpost/documents';
import type { SheetView } from './views.ts';

export interface OpenedSheet {
  readonly view: SheetView;
  /** What its numbers open to, by their places on it. */
  readonly openings: Openings;
}

/** One sheet of a point, its numbers made to open; nothing where the point has no such thing. */
export function pointOpenings(
  designed: DesignedPoint,
  plant: Plant,
  name: string,
  showing: Showing,
): OpenedSheet | undefined {
  const openings = new Openings();
  const setting = { showing, opens: openings.opens };
  const sheet = pointSheets(designed, plant, 'point', setting).find((each) => each.name === name);
  const body = sheet?.body();
  if (body === undefined) return undefined;
  return { view: { name, title: sheet!.title, markup: markupOf(body) }, openings };
}
