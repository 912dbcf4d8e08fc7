import type { OfferedPart } from '@soundpost/core';
import { judgementJson } from './judgement-json.ts';

/** An offered part in the whole plant, for scripts; margins in decibels. */
export function offerJson({ offered, otherKind, deviations, points, difference }: OfferedPart) {
  return {
    offered,
    otherKind,
    deviations,
    points: points.map(({ point, before, after, is }) => ({
      point,
      is,
      before: { outcome: before.outcome, leastMargin: before.leastMargin },
      after: {
        outcome: after.outcome,
        leastMargin: after.leastMargin,
        nearest: after.nearest === undefined ? null : judgementJson(after.nearest),
      },
    })),
    unproven: difference.unproven.map(({ at, target, before, after }) => ({ at, target, before, after })),
    changed: difference.changes.map(({ sort, at, name }) => ({ sort, at, name })),
    testsToRepeat: difference.testsToRepeat,
  };
}
