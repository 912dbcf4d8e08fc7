import type { Derive } from './derivation.ts';

/** A question of yes or no: one thing is held against another, and the numbers stand above already. */
export const comparison: Derive = () => [{ formula: 'none: found and limit are held against each other, yes or no' }];
