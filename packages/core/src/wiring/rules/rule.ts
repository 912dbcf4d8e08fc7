import type { Finding } from '../../finding/finding.ts';
import type { Sheet } from '../../quantity/index.ts';
import type { Clause } from '../../source/source.ts';
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
export interface WiringRule {
  readonly id: string;
  readonly title: string;
  readonly prose: string;
  readonly remedy: readonly string[];
  readonly sources: readonly Clause[];
  findings(subject: WiringCase): readonly Finding[];
}

export function wiringRule(definition: WiringRule): WiringRule {
  return definition;
}
