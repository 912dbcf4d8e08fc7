import { spanningForest } from './cycles.ts';
import type { Conductor, WiredPoint, WiringGraph } from './graph.ts';
import { bondedPoints } from './ground-loops.ts';

/**
 * Where to open a wiring so that no ground loop is left, with no opening too many: as many as there are independent
 * loops, edges − nodes + parts. What practice opens last is joined first, so what closes a loop is what it opens first.
 * Earthing stays whole, and so does a screen that is joined at both ends on purpose, beside a bond along its cable.
 */
export function loopOpenings(graph: WiringGraph, points: readonly WiredPoint[]): readonly Conductor[] {
  const bonded = bondedPoints(points);
  const frames = new Set(graph.nodes.flatMap((each) => (each.is === 'machine frame' ? [each.id] : [])));
  // Beside a bond the loop of screen, case and frame is closed on purpose: the foot of the case stays with the screen.
  const ofBond = ({ use, point, to }: Conductor) =>
    point !== undefined && bonded.has(point) && (use === 'screen' || frames.has(to));
  const stays = (each: Conductor) => each.use === 'earthing' || each.remedy === undefined || ofBond(each);
  const kept = graph.conductors.filter(stays).toSorted((a, b) => rankOf(a) - rankOf(b));
  const openable = graph.conductors.filter((each) => !stays(each)).toSorted((a, b) => b.order - a.order);
  const chords = new Set(spanningForest([...kept, ...openable]).chords);
  return graph.conductors.filter((each) => chords.has(each) && !stays(each));
}

/** Earthing is joined before anything else. */
function rankOf({ use }: Conductor): number {
  return use === 'earthing' ? 0 : 1;
}
