/** One place of a shaft in the plane of two probes at right angles; both coordinates in one unit. */
export interface OrbitPoint {
  readonly x: number;
  readonly y: number;
}

/** Peak-to-peak of a row of samples: highest less lowest. */
export function peakToPeak(samples: readonly number[]): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const sample of samples) {
    if (sample < low) low = sample;
    if (sample > high) high = sample;
  }
  return high - low;
}

/**
 * Largest peak-to-peak displacement in any direction. The extent of the points along a direction, at its largest over
 * all directions, is the distance of the two points that lie farthest apart, and both stand on the convex hull.
 */
export function largestExtent(orbit: readonly OrbitPoint[]): number {
  const corners = hull(orbit);
  let largest = 0;
  for (const [index, a] of corners.entries()) {
    for (const b of corners.slice(index + 1)) largest = Math.max(largest, Math.hypot(a.x - b.x, a.y - b.y));
  }
  return largest;
}

/** Largest distance of the points from their mean. */
export function largestFromMean(orbit: readonly OrbitPoint[]): number {
  const mean = (of: (point: OrbitPoint) => number) => orbit.reduce((sum, point) => sum + of(point), 0) / orbit.length;
  const [x, y] = [mean((point) => point.x), mean((point) => point.y)];
  return orbit.reduce((largest, point) => Math.max(largest, Math.hypot(point.x - x, point.y - y)), 0);
}

/** Corners of the convex hull, by the monotone chain of Andrew (1979): sorted once, then built from below and above. */
function hull(orbit: readonly OrbitPoint[]): readonly OrbitPoint[] {
  const sorted = [...orbit].sort((a, b) => a.x - b.x || a.y - b.y);
  const chain = (points: readonly OrbitPoint[]) => {
    const kept: OrbitPoint[] = [];
    for (const point of points) {
      while (kept.length >= 2 && turn(kept.at(-2)!, kept.at(-1)!, point) <= 0) kept.pop();
      kept.push(point);
    }
    return kept;
  };
  return [...chain(sorted).slice(0, -1), ...chain([...sorted].reverse()).slice(0, -1), ...sorted.slice(0, 1)];
}

/** Above zero where the way a, b, c turns to the left. */
function turn(a: OrbitPoint, b: OrbitPoint, c: OrbitPoint): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}
