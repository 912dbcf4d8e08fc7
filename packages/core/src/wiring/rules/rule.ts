import type { Finding } from '../../finding/finding.ts';
import type { RuleText } from '../../finding/rule-text.ts';
import type { Sheet } from '../../quantity/index.ts';
import type { WiredPoint, WiringGraph } from '../graph.ts';
import type { GroundLoop } from '../ground-loops.ts';
import type { separationSheet } from '../statement.ts';

/** What a rule of the wiring looks at: a whole plant, since a loop may pass several points. */
export interface WiringCase {
  readonly points: readonly WiredPoint[];
  readonly graph: WiringGraph;
  readonly loops: readonly GroundLoop[];
  readonly separation?: Sheet<typeof separationSheet>;
}

/** A rule of the wiring: one file, one line in `rules.ts`. */
export interface WiringRule extends RuleText {
  readonly remedy: readonly string[];
  findings(subject: WiringCase): readonly Finding[];
}

export function wiringRule(definition: WiringRule): WiringRule {
  return definition;
}
