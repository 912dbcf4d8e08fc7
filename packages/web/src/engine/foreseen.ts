import type { DesignedMachine, DesignedPoint, Plant } from '@soundpost/core';
import { tried, triedSubject } from './trial.ts';
import type { ForeseenView, PlaceView } from './views.ts';

/** What would become of a point with another part in one place of its chain; nothing where it has no whole chain. */
export function foreseen(
  plant: Plant,
  { machine, point }: { readonly machine: DesignedMachine; readonly point: DesignedPoint },
  place: PlaceView['place'],
  part: string,
): ForeseenView {
  const of = point.point.of;
  const subject = triedSubject(plant, machine, point, { of, moved: {}, parts: { [place]: part }, speed: undefined });
  return {
    of,
    before: point.appraisal?.outcome ?? 'no chain',
    after: tried(subject, plant)?.judged.outcome ?? 'no chain',
  };
}
