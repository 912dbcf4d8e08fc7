import type { SolvedTrain } from '../solved-train.ts';
import { type MachineRule, type MachineRuleDefinition, machineRule } from './rule.ts';

/** A rule that looks at the whole train, its speeds solved. */
export type TrainRule = MachineRule<[SolvedTrain]>;

export function trainRule(definition: MachineRuleDefinition<[SolvedTrain]>): TrainRule {
  return machineRule(definition);
}
