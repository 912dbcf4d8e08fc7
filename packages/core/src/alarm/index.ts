import type { AnyWorking } from '../working/index.ts';
import { alarmSetPoints } from './alarm-set-points.ts';
import { responseTimeWorking } from './logic/response-time.ts';
import { motionWindowWorking } from './motion-window.ts';

export * from './alarm-set-points.ts';
export * from './event/index.ts';
export * from './logic/index.ts';
export * from './loop-checkpoints.ts';
export * from './motion-window.ts';
export * from './policies/policies.ts';
export * from './policies/policy.ts';
export * from './policies/quarter-above-baseline.ts';
export * from './register.ts';
export { type AlarmCase, type AlarmRule, alarmRule } from './rules/rule.ts';
export { alarmRules, orderFindings } from './rules/rules.ts';
export * from './set-points.ts';

/** The formulas of the alarm room. */
export const alarmWorkings: readonly AnyWorking[] = [alarmSetPoints, responseTimeWorking, motionWindowWorking];
