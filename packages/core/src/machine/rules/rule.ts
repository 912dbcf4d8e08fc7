import type { Finding } from '../../finding/finding.ts';
import type { Clause } from '../../source/source.ts';
import type { TypedTrain } from '../reading.ts';

/** What a rule finds; whose rule it is, and on whose word, stands in the rule. */
export type Found = Omit<Finding, 'rule' | 'sources'>;

interface RuleText {
  /** `machine/poles-against-speed`. */
  readonly id: string;
  readonly title: string;
  readonly prose: string;
  readonly sources: readonly Clause[];
  /** A train that passes, and one that does not. */
  readonly valid: TypedTrain;
  readonly invalid: TypedTrain;
}

/** One check of a machine: what it finds, why, on whose word, with a train that passes it and one that does not. */
export interface MachineRule<Subject extends readonly unknown[]> extends RuleText {
  check(...subject: Subject): readonly Finding[];
}

export interface MachineRuleDefinition<Subject extends readonly unknown[]> extends RuleText {
  finds(...subject: Subject): readonly Found[];
}

export function machineRule<const Subject extends readonly unknown[]>(
  definition: MachineRuleDefinition<Subject>,
): MachineRule<Subject> {
  const { finds, ...text } = definition;
  return {
    ...text,
    check: (...subject) => finds(...subject).map((found) => ({ rule: text.id, ...found, sources: text.sources })),
  };
}
