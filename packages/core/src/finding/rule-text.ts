import type { Clause } from '../source/source.ts';
import type { Finding } from './finding.ts';

/** What a rule says of itself. */
export interface RuleText {
  /** `demand/levels-in-order`. */
  readonly id: string;
  readonly title: string;
  /** What it asks and why, in plain words. */
  readonly prose: string;
  readonly sources: readonly Clause[];
}

/** What a rule finds; whose rule it is, and on whose word, stands in the rule. */
export type Found = Omit<Finding, 'rule' | 'sources'>;

/** What a rule found, with its name and its sources. */
export function foundBy({ id, sources }: RuleText, found: readonly Found[]): readonly Finding[] {
  return found.map((each) => ({ rule: id, ...each, sources }));
}
