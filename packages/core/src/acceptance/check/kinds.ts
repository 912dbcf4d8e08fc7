import { kinds } from '../../quantity/kinds.ts';
import { bias } from './bias.ts';
import type { CheckKind } from './check-kind.ts';
import { noiseFloor } from './noise-floor.ts';
import { settling } from './settling.ts';

/** Every check of a commissioning, in the order in which they are made. */
export const checkKinds: readonly CheckKind[] = kinds(bias, settling, noiseFloor);
