import { kinds } from '../../quantity/kinds.ts';
import type { Part } from '../part-kind.ts';
import { signalCable } from './signal-cable.ts';

/** Every kind of cable. */
export const cableKinds = kinds(signalCable);
export type Cable = Part<(typeof cableKinds)[number]>;
