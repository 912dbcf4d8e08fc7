import { kinds } from '../../quantity/kinds.ts';
import type { Part } from '../part-kind.ts';
import { adhesivePad } from './adhesive-pad.ts';
import { flatMagnet } from './flat-magnet.ts';
import { handProbe } from './hand-probe.ts';
import { isolatingStud } from './isolating-stud.ts';
import { quickLock } from './quick-lock.ts';
import { stud } from './stud.ts';
import { twoPoleMagnet } from './two-pole-magnet.ts';

/** Every kind of mount. */
export const mountKinds = kinds(stud, adhesivePad, quickLock, flatMagnet, twoPoleMagnet, handProbe, isolatingStud);
export type Mount = { [K in (typeof mountKinds)[number] as K['kind']]: Part<K> }[(typeof mountKinds)[number]['kind']];
