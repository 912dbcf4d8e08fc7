import type { Answer, Missing, NodeKind, WiringGraph, WiringNode } from '@soundpost/core';

/** Two places of the wiring of a point: joined, kept apart, or not known to be either. */
export type Joint = {
  readonly point: string;
  readonly from: WiringNode;
  readonly to: WiringNode;
} & (
  | { readonly state: 'joined'; readonly name: string; readonly resistance: Answer<number> }
  | { readonly state: 'apart'; readonly by: string }
  | { readonly state: 'unknown'; readonly missing: readonly Missing[] }
);

/** Every joint of every point, in the order from the machine to the cabinet. */
export function jointsOf({
  nodes,
  conductors,
  isolations,
  unknown,
}: WiringGraph): ReadonlyMap<string, readonly Joint[]> {
  const byId = new Map(nodes.map((each) => [each.id, each]));
  const all: readonly Joint[] = [
    ...conductors.flatMap(({ point, from, to, name, resistance }): readonly Joint[] =>
      point === undefined
        ? []
        : [{ point, from: byId.get(from)!, to: byId.get(to)!, state: 'joined', name, resistance }],
    ),
    ...isolations.map(
      ({ point, from, to, by }): Joint => ({ point, from: byId.get(from)!, to: byId.get(to)!, state: 'apart', by }),
    ),
    ...unknown.map(
      ({ point, from, to, missing }): Joint => ({
        point,
        from: byId.get(from)!,
        to: byId.get(to)!,
        state: 'unknown',
        missing,
      }),
    ),
  ];
  const byPoint = new Map<string, Joint[]>();
  for (const each of all) {
    const list = byPoint.get(each.point);
    if (list === undefined) byPoint.set(each.point, [each]);
    else list.push(each);
  }
  for (const list of byPoint.values()) list.sort((one, other) => placeOf(one) - placeOf(other));
  return byPoint;
}

/** From the machine to the cabinet: the way of the signal first, then that of the screen. */
const order: readonly (readonly [from: NodeKind, to: NodeKind])[] = [
  ['case', 'machine frame'],
  ['signal', 'case'],
  ['signal', 'barrier earth bar'],
  ['signal', 'common'],
  ['common', 'cabinet earth bar'],
  ['screen', 'case'],
  ['screen', 'junction box'],
  ['screen', 'cabinet earth bar'],
];

function placeOf({ from, to }: Joint): number {
  return order.findIndex(([start, end]) => from.is === start && to.is === end);
}

export function jointBetween(joints: readonly Joint[], from: NodeKind, to: NodeKind): Joint | undefined {
  return joints.find((each) => each.from.is === from && each.to.is === to);
}
