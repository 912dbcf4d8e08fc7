import { kinds } from '../../quantity/kinds.ts';
import { atRest } from './at-rest.ts';
import { besideReference } from './beside-reference.ts';
import { calibrator } from './calibrator.ts';
import type { OccasionKind, OccasionOf } from './occasion-kind.ts';
import { powerOn } from './power-on.ts';
import { running } from './running.ts';
import { slowRolling } from './slow-roll.ts';
import { stopped } from './stopped.ts';
import { taps } from './taps.ts';

/** Every occasion on which a record may be made. */
export const occasionKinds = kinds(atRest, powerOn, stopped, taps, calibrator, besideReference, slowRolling, running);

export type OccasionName = (typeof occasionKinds)[number]['kind'];
export type Occasion = {
  [K in (typeof occasionKinds)[number] as K['kind']]: OccasionOf<K>;
}[OccasionName];

/** The kind of an occasion. */
export function occasionKindOf({ kind }: Occasion): OccasionKind {
  return occasionKinds.find((each) => each.kind === kind)!;
}
