import { type Finding, inOrderOfWeight } from '../finding/finding.ts';
import type { Sheet } from '../quantity/index.ts';
import { type WiredPoint, type WiringGraph, wiringGraph } from './graph.ts';
import { type GroundLoop, groundLoops } from './ground-loops.ts';
import type { WiringCase } from './rules/rule.ts';
import { wiringRules } from './rules/rules.ts';
import type { separationSheet } from './statement.ts';

/** The wiring of a plant: what is joined to what, the loops it closes, and what is wrong with that. */
export interface PlantWiring {
  readonly graph: WiringGraph;
  readonly loops: readonly GroundLoop[];
  readonly findings: readonly Finding[];
}

export function plantWiring(
  points: readonly WiredPoint[],
  separation: Sheet<typeof separationSheet> | undefined,
): PlantWiring {
  const graph = wiringGraph(points);
  const loops = groundLoops(graph, points);
  const subject: WiringCase = { points, graph, loops, ...(separation === undefined ? {} : { separation }) };
  return { graph, loops, findings: inOrderOfWeight(wiringRules.flatMap((rule) => rule.findings(subject))) };
}
