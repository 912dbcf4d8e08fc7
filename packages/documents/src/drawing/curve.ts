import type { Point } from './drawing.ts';

/** A curve in the units of its axes; a gap where it has no value. */
export type Sampled = readonly (Point | undefined)[];

/** The frequencies at which a curve is drawn: evenly on a log scale, closer about each sharp turn. */
export function plotted(low: number, high: number, features: readonly number[] = [], count = 180): readonly number[] {
  const points = Array.from({ length: count + 1 }, (_, index) => low * (high / low) ** (index / count));
  for (const feature of features) {
    for (let step = -12; step <= 12; step++) points.push(feature * (1 + step / 80));
  }
  return points.filter((each) => each >= low && each <= high).sort((a, b) => a - b);
}

/** The parts of a curve that lie between two heights, cut where it crosses them. */
export function between(curve: Sampled, top: number, bottom: number): readonly (readonly Point[])[] {
  const [low, high] = [Math.min(top, bottom), Math.max(top, bottom)];
  const parts: Point[][] = [];
  let part: Point[] = [];
  const end = () => {
    if (part.length > 1) parts.push(part);
    part = [];
  };
  let before: Point | undefined;
  for (const point of curve) {
    if (point === undefined) {
      end();
      before = undefined;
      continue;
    }
    if (before !== undefined) {
      const piece = clipped(before, point, low, high);
      if (piece === undefined) end();
      else {
        const [from, to] = piece;
        if (part.length === 0) part.push(from);
        part.push(to);
        if (to !== point) end();
      }
    }
    before = point;
  }
  end();
  return parts;
}

/** A straight piece cut to a range of heights; none where it lies outside. */
function clipped(from: Point, to: Point, low: number, high: number): readonly [Point, Point] | undefined {
  if (Math.max(from[1], to[1]) < low || Math.min(from[1], to[1]) > high) return undefined;
  const cutAt = (point: Point, other: Point): Point => {
    const limit = point[1] < low ? low : point[1] > high ? high : undefined;
    if (limit === undefined) return point;
    const share = (limit - point[1]) / (other[1] - point[1]);
    return [point[0] + share * (other[0] - point[0]), limit];
  };
  return [cutAt(from, to), cutAt(to, from)];
}
