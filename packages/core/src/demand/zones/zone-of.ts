import { type Answer, answer, type Band, type Level, showBand, thenAnswer, unanswered } from '../../quantity/index.ts';
import { boundariesAt, type ZoneTable } from './zone-table.ts';

export const zones = ['A', 'B', 'C', 'D'] as const;
export type Zone = (typeof zones)[number];

/**
 * The zone of a level; a level that is exactly on a boundary is still in the lower zone. Unanswered where the level is
 * of another quantity, detector or band than the table, or states no band where the table has one, or where the table
 * needs the shaft speed (hertz) and it is not given: no zone is guessed.
 */
export function zoneOf(measured: Level, table: ZoneTable, speed?: number): Answer<Zone> {
  return thenAnswer(boundariesAt(table, speed), ({ ab, bc, cd }) => {
    const asked = notLike(measured, ab);
    if (asked !== undefined) return unanswered([{ of: table.title, what: asked }]);
    // A part in 1e9 of slack: a level and a limit typed in unlike units may differ in their last bit.
    const exceeded = [ab, bc, cd].filter((boundary) => measured.value > boundary.value * (1 + 1e-9)).length;
    return answer(zones[exceeded]!);
  });
}

/** What is asked for instead, where a level is not of the kind of a limit. */
export function notLike(measured: Level, limit: Level): string | undefined {
  const same = measured.quantity === limit.quantity && measured.detector === limit.detector;
  if (same && (limit.band === undefined || sameBand(measured.band, limit.band))) return undefined;
  return `a level as ${inWords(limit)} (stated: ${inWords(measured)})`;
}

function sameBand(a: Band | undefined, b: Band): boolean {
  return a !== undefined && Math.abs(a.low - b.low) <= 1e-9 * b.low && Math.abs(a.high - b.high) <= 1e-9 * b.high;
}

function inWords(each: Level): string {
  const band = each.band === undefined ? 'no band stated' : showBand(each.band);
  return `${each.detector} ${each.quantity}, ${band}`;
}
