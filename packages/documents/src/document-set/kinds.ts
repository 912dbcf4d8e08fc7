import { kinds } from '@soundpost/core';
import type { IssuedKind } from './issued-kind.ts';
import { instrumentList } from './kinds/instrument-list.ts';

/** Every kind of document that is issued, in the order of a set. */
export const issuedKinds: readonly IssuedKind[] = kinds(instrumentList);
