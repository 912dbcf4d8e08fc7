import { kinds } from '../../quantity/kinds.ts';
import { bearingFamily } from './bearing.ts';
import { brokenBarFamily } from './broken-bar.ts';
import type { FamilyKind } from './family-kind.ts';
import { gearFamily } from './gear.ts';
import { loosenessFamily } from './looseness.ts';
import { misalignmentFamily } from './misalignment.ts';
import { unbalanceFamily } from './unbalance.ts';

/** Every family of machine faults that a record of a running machine may name. */
export const familyKinds: readonly FamilyKind[] = kinds(
  unbalanceFamily,
  misalignmentFamily,
  loosenessFamily,
  bearingFamily,
  gearFamily,
  brokenBarFamily,
);
