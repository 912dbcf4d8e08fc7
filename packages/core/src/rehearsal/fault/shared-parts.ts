import { type Answer, fromAll, type Level, level, type Motion } from '../../quantity/index.ts';
import type { CourseTerm } from '../course.ts';
import type { Modulation, TonePart } from '../part/part.ts';
import type { FaultPlace } from './fault-kind.ts';

export function share(size: Level<Motion>, times: number): Level<Motion> {
  return level(size.quantity, size.value * times, size.detector);
}

/** One tone of a place: its line there, so many times it, and its share of the size of the fault. */
export interface PlacedTone {
  readonly line: string;
  readonly times?: number;
  readonly share: number;
  readonly more?: Partial<Pick<TonePart, 'grows' | 'phase' | 'modulatedBy' | 'assumed'>>;
}

/** Some tones of one place, each a share of the size. */
export function tones(place: FaultPlace, size: Level<Motion>, of: readonly PlacedTone[]): Answer<readonly TonePart[]> {
  const parts = of.map(({ line, times = 1, share: part, more }) =>
    fromAll(
      { terms: place.line(line, times) },
      ({ terms }): TonePart => ({
        is: 'tone',
        name: `${times === 1 ? '' : `${times} × `}${place.at}/${line}`,
        of: terms,
        level: share(size, part),
        ...more,
      }),
    ),
  );
  return fromAll(Object.fromEntries(parts.entries()), (known) => Object.values(known));
}

/** Strength that follows the turns of the shaft in a role; none where that role stands still. */
export function followingShaft(place: FaultPlace, role: string, depth: number): Answer<readonly Modulation[]> {
  const turn: Answer<readonly CourseTerm[]> = place.turn(role) ?? { known: true, value: [] };
  return fromAll({ turn }, ({ turn: of }) => (of.length === 0 ? [] : [{ of, depth }]));
}
