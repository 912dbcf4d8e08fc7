import type { Missing } from '../quantity/index.ts';
import { nodeOf } from './drawing.ts';
import { type WiredPoint, wiringGraph } from './graph.ts';

/** Where along a chain something is joined to earth. */
export const earthPlaceNames = ['transducer', 'junction box', 'barrier', 'input'] as const;
export type EarthPlace = (typeof earthPlaceNames)[number];

/** Every place at which the return and the screen of one point are joined to earth, and what is not known of that. */
export interface EarthPlaces {
  readonly signal: readonly EarthPlace[];
  readonly screen: readonly EarthPlace[];
  readonly unknown: readonly Missing[];
}

/** Read off the wiring of the point alone: joints that conduct; a joint of which nothing is known is named. */
export function earthPlaces(wired: WiredPoint): EarthPlaces {
  const { conductors, nodes, unknown } = wiringGraph([wired]);
  const at = wired.point.of;
  const kindOfNode = new Map(nodes.map((each) => [each.id, each.is]));
  const joined = (from: string, to: (is: string | undefined) => boolean) =>
    conductors.some((each) => each.from === from && to(kindOfNode.get(each.to)));
  const caseEarthed = joined(nodeOf.case(at), (is) => is === 'machine frame');
  const screens = [nodeOf.screen(at), nodeOf.farScreen(at)];
  const screened = (is: string) => screens.some((each) => joined(each, (kind) => kind === is));
  return {
    signal: [
      ...(caseEarthed && joined(nodeOf.signal(at), (is) => is === 'case') ? (['transducer'] as const) : []),
      ...(joined(nodeOf.signal(at), (is) => is === 'barrier earth bar') ? (['barrier'] as const) : []),
      ...(joined(nodeOf.common(at), (is) => is === 'cabinet earth bar') ? (['input'] as const) : []),
    ],
    screen: [
      ...(caseEarthed && screened('case') ? (['transducer'] as const) : []),
      ...(screened('junction box') ? (['junction box'] as const) : []),
      ...(screened('cabinet earth bar') ? (['input'] as const) : []),
    ],
    unknown: unknown.filter((each) => each.point === at).flatMap((each) => each.missing),
  };
}
