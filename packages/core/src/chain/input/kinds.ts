import { kinds } from '../../quantity/kinds.ts';
import type { Part } from '../part-kind.ts';
import { constantCurrentInput } from './constant-current-input.ts';
import { currentCard } from './current-card.ts';
import { directVoltageInput } from './direct-voltage-input.ts';

/** Every kind of input. */
export const inputKinds = kinds(constantCurrentInput, directVoltageInput, currentCard);
export type Input = { [K in (typeof inputKinds)[number] as K['kind']]: Part<K> }[(typeof inputKinds)[number]['kind']];
