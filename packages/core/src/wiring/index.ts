import type { AnyWorking } from '../working/index.ts';
import { humAsVibration } from './hum.ts';

export * from './cycles.ts';
export { nodeOf } from './drawing.ts';
export * from './earth-places.ts';
export * from './graph.ts';
export { everyGroundLoop, type GroundLoop, groundLoops, showLoop } from './ground-loops.ts';
export * from './hum.ts';
export * from './loop-hum.ts';
export { loopOpenings } from './loop-openings.ts';
export * from './plant-wiring.ts';
export type { WiringCase, WiringRule } from './rules/rule.ts';
export { wiringRules } from './rules/rules.ts';
export * from './separation.ts';
export * from './statement.ts';

/** The formulas of the wiring. */
export const wiringWorkings: readonly AnyWorking[] = [humAsVibration];
