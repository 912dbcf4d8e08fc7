import { kinds } from '../../quantity/kinds.ts';
import type { FaultKind } from './fault-kind.ts';
import { innerRing } from './inner-ring.ts';
import { outerRing } from './outer-ring.ts';
import { unbalance } from './unbalance.ts';

/** Every fault a rehearsal can put into a machine. */
export const faultKinds = kinds(unbalance, outerRing, innerRing);
export type FaultKindName = (typeof faultKinds)[number]['kind'];

export function faultKindCalled(word: string): FaultKind | undefined {
  return (faultKinds as readonly FaultKind[]).find(({ kind }) => kind === word);
}
