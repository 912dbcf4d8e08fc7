import type { Finding } from '../../finding/finding.ts';
import { type Found, foundBy, type RuleText } from '../../finding/rule-text.ts';
import type { TypedTrain } from '../reading.ts';

interface MachineRuleText extends RuleText {
  /** A train that passes, and one that does not. */
  readonly valid: TypedTrain;
  readonly invalid: TypedTrain;
}

/** One check of a machine: what it finds, why, on whose word, with a train that passes it and one that does not. */
export interface MachineRule<Subject extends readonly unknown[]> extends MachineRuleText {
  check(...subject: Subject): readonly Finding[];
}

export interface MachineRuleDefinition<Subject extends readonly unknown[]> extends MachineRuleText {
  finds(...subject: Subject): readonly Found[];
}

export function machineRule<const Subject extends readonly unknown[]>(
  definition: MachineRuleDefinition<Subject>,
): MachineRule<Subject> {
  const { finds, ...text } = definition;
  return { ...text, check: (...subject) => foundBy(text, finds(...subject)) };
}
