import type { AlarmPolicy } from './policy.ts';
import { quarterAboveBaseline } from './quarter-above-baseline.ts';

export const alarmPolicies: readonly AlarmPolicy[] = [quarterAboveBaseline];
