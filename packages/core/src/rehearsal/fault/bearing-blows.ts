import { type Answer, answer, fromAll, valueIfStated } from '../../quantity/index.ts';
import type { CourseTerm } from '../course.ts';
import type { ImpactsPart, MotionPart } from '../part/part.ts';
import type { FaultPlace, FaultSize } from './fault-kind.ts';

/** Half of the ring under load: no clearance and no preload. Common practice, no source. */
const loadExtent = 0.5;

/**
 * Share of the load at a place of the ring, by the turn from where it is hardest: (1 − (1 − cos φ)/(2ε))^1.5 inside the
 * loaded part and nothing outside. Source: Stribeck's distribution for point contact (from memory), as used by McFadden
 * and Smith 1984.
 */
export function loadShare(turn: number): number {
  const inside = 1 - (1 - Math.cos(2 * Math.PI * turn)) / (2 * loadExtent);
  return inside > 0 ? inside ** 1.5 : 0;
}

/** Random slip of one interval to the next: within the 1 to 2 % that the literature gives. */
export const usualSlip = 0.01;

/** What a spot on a ring turns under: nothing where the load keeps its place on it. */
export function turnsUnderLoad(place: FaultPlace, ring: 'inner' | 'outer'): Answer<readonly CourseTerm[] | undefined> {
  const { element } = place;
  if (element?.kind !== 'rolling-bearing') return answer(undefined);
  const load = valueIfStated(element.sheet.values.load) ?? 'stands still';
  if (load === `turns with the ${ring} ring`) return answer(undefined);
  const turns = load === 'stands still' ? ring : ring === 'inner' ? 'outer' : 'inner';
  const ofRing = place.turn(ring);
  const ofLoad = turns === ring ? undefined : place.turn(turns);
  if (load === 'stands still') return ofRing ?? answer(undefined);
  return fromAll({ ring: ofRing ?? answer([]), load: ofLoad ?? answer([]) }, (known) => {
    const all = [...known.ring, ...known.load.map(backwards)];
    return all.length === 0 ? undefined : all;
  });
}

function backwards(term: CourseTerm): CourseTerm {
  return 'hertz' in term ? { hertz: -term.hertz } : { ...term, times: -term.times };
}

/** Blows at a line of the bearing, weighed by the load where the spot passes it. */
export function blows(
  { size }: FaultSize,
  place: FaultPlace,
  line: string,
  weighing: Answer<readonly CourseTerm[] | undefined>,
  more: Partial<Pick<ImpactsPart, 'alternate' | 'scatter' | 'slip'>> = {},
): Answer<readonly MotionPart[]> {
  return fromAll({ of: place.line(line), weighing }, (known): readonly MotionPart[] => [
    {
      is: 'impacts',
      name: `${place.at}/${line}`,
      of: known.of,
      level: size,
      modes: place.modes,
      slip: usualSlip,
      scatter: 0.1,
      ...(known.weighing === undefined ? {} : { weighed: { of: known.weighing, weight: loadShare } }),
      ...more,
      assumed: place.modesAssumed,
    },
  ]);
}
