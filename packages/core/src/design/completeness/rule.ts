import type { Finding } from '../../finding/finding.ts';
import type { RuleText } from '../../finding/rule-text.ts';
import type { Design } from '../design.ts';

/** A rule of completeness: what must not be missing before a design leaves the office. One file, one line in `rules.ts`. */
export interface CompletenessRule extends RuleText {
  readonly remedy: readonly string[];
  findings(design: Design): readonly Finding[];
}

export function completenessRule(definition: CompletenessRule): CompletenessRule {
  return definition;
}
