import { type Answer, fromAll } from '../quantity/index.ts';
import type { JudgedNeed, JudgedWay, PlantKeeping } from './plant-keeping.ts';
import type { StandardisedPlant } from './standardised.ts';

/** Something that must be done again where another part stands in: a changed value, and what rests on it. */
export interface ChangeWithSubstitute {
  readonly what: 'sensitivity' | 'mounted resonance' | 'mount' | 'signal' | 'area proof';
  readonly from: Answer<number> | string;
  readonly to: Answer<number> | string;
  readonly redo: readonly string[];
}

/** A kept part that could stand in at a point, with the least margin it leaves. */
export interface Substitute {
  readonly way: JudgedWay;
  readonly changes: readonly ChangeWithSubstitute[];
}

export interface SubstitutesOfPoint {
  readonly point: string;
  readonly chosen: JudgedWay;
  /** Made of kept types alone, largest margin first. */
  readonly substitutes: readonly Substitute[];
}

/** For every point the ways made of kept types that also meet it, so that a fitter knows what may stand in. */
export function substitutesOf(keeping: PlantKeeping, plan: StandardisedPlant): readonly SubstitutesOfPoint[] {
  const kept = new Set(plan.kept.map(({ place }) => place));
  const wayAt = new Map(plan.chosen.map(({ point, way }) => [point, way.name]));
  return keeping.needs.flatMap(({ need, ways }: JudgedNeed) => {
    const open = ways.filter(({ way }) => way.parts.every((k) => kept.has(k)));
    return need.points.flatMap((point): SubstitutesOfPoint[] => {
      const chosen = open.find(({ way }) => way.name === wayAt.get(point));
      if (chosen === undefined) return [];
      const substitutes = open
        .filter((each) => each !== chosen)
        .sort((a, b) => b.row.leastMargin - a.row.leastMargin)
        .map((way) => ({ way, changes: changesBetween(chosen, way) }));
      return [{ point, chosen, substitutes }];
    });
  });
}

function changesBetween(chosen: JudgedWay, other: JudgedWay): readonly ChangeWithSubstitute[] {
  const changes: ChangeWithSubstitute[] = [];
  const a = chosen.row.appraisal.prediction.chain;
  const b = other.row.appraisal.prediction.chain;
  if (a.transducer.signal !== b.transducer.signal) {
    changes.push({
      what: 'signal',
      from: a.transducer.signal,
      to: b.transducer.signal,
      redo: ['configuration of the input', 'loop diagram', 'alarm register'],
    });
  }
  if (!sameAnswer(a.sensitivity, b.sensitivity)) {
    changes.push({
      what: 'sensitivity',
      from: a.sensitivity,
      to: b.sensitivity,
      redo: ['sensitivity in the input', 'scale of the alarm', 'expected values of commissioning'],
    });
  }
  if (chosen.mount.name !== other.mount.name) {
    changes.push({
      what: 'mount',
      from: chosen.mount.name,
      to: other.mount.name,
      redo: ['preparation of the surface', 'expected resonance of the tap test'],
    });
  }
  if (chosen.transducer.name !== other.transducer.name && chosen.row.appraisal.point.area !== undefined) {
    changes.push({
      what: 'area proof',
      from: chosen.transducer.name,
      to: other.transducer.name,
      redo: ['comparison of entity parameters with the certificate of the other part'],
    });
  }
  return changes;
}

function sameAnswer(a: Answer<number>, b: Answer<number>): boolean {
  const same = fromAll({ a, b }, (known) => known.a === known.b);
  return same.known ? same.value : a.known === b.known;
}

/** Below this least margin, in decibels, a point is said to be marginal. Common practice, no source. */
export const marginalBelow = 3;

/** Points that would be marginal, were one kept part number dropped: the best that is left leaves little margin. */
export function marginalWithout(substitutes: readonly SubstitutesOfPoint[], place: number): readonly string[] {
  return substitutes.flatMap(({ point, chosen, substitutes: others }) => {
    if (!chosen.way.parts.includes(place)) return [];
    const left = others.filter(({ way }) => !way.way.parts.includes(place));
    const best = left.reduce((most, { way }) => Math.max(most, way.row.leastMargin), Number.NEGATIVE_INFINITY);
    return left.length > 0 && best < marginalBelow ? [point] : [];
  });
}
