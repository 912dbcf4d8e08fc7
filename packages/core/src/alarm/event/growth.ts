import { type Level, level, type Motion, Refusal } from '../../quantity/index.ts';

/** A level on a day. */
export interface GrowthPoint {
  readonly day: number;
  readonly level: Level<Motion>;
}

/** How a level grows: days rising, one motion and detector, every level above zero. */
export type GrowthCurve = readonly GrowthPoint[];

/** Checks a curve as somebody states it. Throws Refusal. */
export function growthCurve(points: readonly GrowthPoint[]): GrowthCurve {
  const [first] = points;
  if (first === undefined) throw new Refusal({ read: 'no points', expected: 'at least one level on a day' });
  for (const [index, point] of points.entries()) {
    const before = points[index - 1];
    if (before !== undefined && !(point.day > before.day)) {
      throw new Refusal({ read: `day ${point.day} after day ${before.day}`, expected: 'days that rise' });
    }
    if (!(point.level.value > 0) || !Number.isFinite(point.level.value)) {
      throw new Refusal({ read: `a level of ${point.level.value}`, expected: 'a level above zero' });
    }
    if (point.level.quantity !== first.level.quantity || point.level.detector !== first.level.detector) {
      throw new Refusal({
        read: `a ${point.level.detector} ${point.level.quantity} beside a ${first.level.detector} ${first.level.quantity}`,
        expected: 'levels of one motion and detector',
      });
    }
  }
  return points;
}

/** Grows by a constant factor a day from one level to another: damage feeds on itself. */
export function steadyGrowth(from: Level<Motion>, to: Level<Motion>, days: number): GrowthCurve {
  if (!(days > 0)) throw new Refusal({ read: `${days} days`, expected: 'a time above zero' });
  return growthCurve([
    { day: 0, level: from },
    { day: days, level: to },
  ]);
}

/** The level on a day: a straight line on a logarithmic scale between the points, held before the first and after the last. */
export function levelOn(curve: GrowthCurve, day: number): Level<Motion> {
  const first = curve[0]!;
  const last = curve.at(-1)!;
  if (day <= first.day) return first.level;
  if (day >= last.day) return last.level;
  const right = curve.findIndex((each) => each.day > day);
  const [a, b] = [curve[right - 1]!, curve[right]!];
  const share = (day - a.day) / (b.day - a.day);
  return level(a.level.quantity, a.level.value * (b.level.value / a.level.value) ** share, a.level.detector);
}
