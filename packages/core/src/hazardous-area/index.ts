import type { AnyWorking } from '../working/index.ts';
import { entityComparisonWorking } from './workings/entity-comparison.ts';
import { resistiveBarrierWorking } from './workings/resistive-barrier.ts';

export * from './area-comparison.ts';
export * from './area-findings.ts';
export { atMost, wholeMetresDown } from './at-most.ts';
export * from './caution.ts';
export * from './entity-comparison.ts';
export * from './group.ts';
export * from './judged-area.ts';
export * from './loop-in-area.ts';
export * from './marking.ts';
export * from './multicore.ts';
export * from './permitted-capacitance.ts';
export * from './protection-concept.ts';
export * from './protection-level.ts';
export { areaRules } from './rules/rules.ts';
export * from './shared-channels.ts';
export * from './simple-apparatus.ts';
export * from './temperature-class.ts';
export * from './workings/entity-comparison.ts';
export * from './workings/resistive-barrier.ts';
export * from './zone.ts';

/** The formulas of the hazardous-area room. */
export const areaWorkings: readonly AnyWorking[] = [entityComparisonWorking, resistiveBarrierWorking];
