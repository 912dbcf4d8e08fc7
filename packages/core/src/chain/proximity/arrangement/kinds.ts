import { kinds } from '../../../quantity/kinds.ts';
import type { Part } from '../../part-kind.ts';
import { kindCalled } from '../../part-kind.ts';
import type { ArrangementKind } from './arrangement-kind.ts';
import { casingBeside } from './casing-beside.ts';
import { oncePerTurn } from './once-per-turn.ts';
import { slowRoll } from './slow-roll.ts';
import { thrustPair } from './thrust-pair.ts';
import { xyPair } from './xy-pair.ts';

/** Everything that probes do at a point. */
export const arrangementKinds = kinds(xyPair, thrustPair, oncePerTurn, slowRoll, casingBeside);
export type Arrangement = {
  [K in (typeof arrangementKinds)[number] as K['kind']]: Part<K>;
}[(typeof arrangementKinds)[number]['kind']];

/** The kind of an arrangement; kind and sheet of one word belong together. */
export function arrangementKindOf(arrangement: Arrangement): ArrangementKind {
  return kindCalled(arrangementKinds as readonly unknown[] as readonly ArrangementKind[], arrangement.kind);
}
