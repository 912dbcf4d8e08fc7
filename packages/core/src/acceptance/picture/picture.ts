import type { Said } from '../../finding/measure.ts';

export interface PictureAxis {
  readonly name: string;
  readonly unit: string;
  readonly scale: 'linear' | 'log';
  readonly low: number;
  readonly high: number;
}

export interface PictureCurve {
  readonly name: string;
  readonly is: 'found' | 'expected' | 'limit';
  readonly points: readonly (readonly [x: number, y: number])[];
  /** Points of their own, not a line through them. */
  readonly apart?: true;
}

/** From here to there along an axis: where something is expected to lie. */
export interface PictureBand {
  readonly name: string;
  readonly along: 'x' | 'y';
  readonly low: number;
  readonly high: number;
}

/** One row of the numbers a picture shows, for whoever cannot see it. */
export interface PictureRow {
  readonly what: string;
  readonly expected: Said;
  readonly found: Said;
}

/** What a record shows beside what was expected of it, in the units its axes name; how it is drawn is a document's. */
export interface Picture {
  /** The record or table. */
  readonly of: string;
  readonly at: string;
  readonly title: string;
  readonly x: PictureAxis;
  readonly y: PictureAxis;
  readonly curves: readonly PictureCurve[];
  readonly bands: readonly PictureBand[];
  readonly marks: readonly { readonly called: string; readonly x: number }[];
  readonly rows: readonly PictureRow[];
}

/** Points kept of a curve: more are not told apart on paper. */
const mostPoints = 360;

/** A number that may not be there, for a row. */
export function shownOr(value: number, show: (value: number) => Said): Said {
  return Number.isFinite(value) ? show(value) : 'no number';
}

/** The highest point of each of at most 360 stretches, equal ones of a linear axis, equal ratios of a logarithmic one. */
export function thinned(
  points: Iterable<readonly [number, number]>,
  { low, high, scale }: Pick<PictureAxis, 'low' | 'high' | 'scale'>,
): readonly (readonly [number, number])[] {
  const share = (x: number) => (scale === 'log' ? Math.log(x / low) / Math.log(high / low) : (x - low) / (high - low));
  const kept = new Map<number, readonly [number, number]>();
  for (const [x, y] of points) {
    if (!(x >= low && x <= high) || !Number.isFinite(y)) continue;
    const bin = Math.floor(share(x) * mostPoints);
    const before = kept.get(bin);
    if (before === undefined || y > before[1]) kept.set(bin, [x, y]);
  }
  return [...kept.values()].sort(([a], [b]) => a - b);
}

/** An axis that holds these values with a little room; a linear one holds zero where it is near. */
export function axisFor(
  name: string,
  unit: string,
  scale: PictureAxis['scale'],
  values: readonly number[],
): PictureAxis {
  // What lies beyond is no voltage and no motion; an axis that held it would show nothing else.
  const finite = values.filter((each) => Math.abs(each) < 1e15 && (scale === 'linear' || each > 1e-15));
  const [least, most] = [Math.min(...finite), Math.max(...finite)];
  if (finite.length === 0) return { name, unit, scale, low: scale === 'log' ? 0.1 : 0, high: 1 };
  if (scale === 'log') return { name, unit, scale, low: least / 1.5, high: Math.max(most * 1.5, least * 10) };
  const size = Math.max(Math.abs(least), Math.abs(most));
  // Values that hardly differ are drawn as one line: digits of the axis end before their difference.
  const room = most - least > 1e-6 * size ? 0.08 * (most - least) : Math.max(size * 0.05, 1e-9);
  return { name, unit, scale, low: least - room, high: most + room };
}
