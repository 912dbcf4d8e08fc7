import type { DesignedPoint } from '@soundpost/core';
import { label, type Mark, type Point, polyline } from '../drawing/drawing.ts';
import { boxesAlong, type Placing } from '../drawing/label-placing.ts';
import type { Plot } from '../drawing/plot.ts';
import { edges, isLine, type TargetMark, velocityOf } from './amplitude-content.ts';

const names = { ab: 'A/B', bc: 'B/C', cd: 'C/D' } as const;

/** The boundaries of the evaluation zones, over the band of each target that is one number of the same quantity. */
export function zoneLines(
  { boundaries }: Pick<DesignedPoint, 'boundaries'>,
  marks: readonly TargetMark[],
  plot: Plot,
  free: Placing,
): readonly Mark[] {
  if (!boundaries.known) return [];
  const { x, y, box, size } = plot;
  const held = marks.filter((mark) => !isLine(mark.target) && mark.smallest?.quantity === boundaries.value.ab.quantity);
  const lines = held.flatMap((mark) =>
    (['ab', 'bc', 'cd'] as const).flatMap((zone) => {
      const level = boundaries.value[zone];
      if (level.quantity !== 'velocity' && level.quantity !== 'displacement' && level.quantity !== 'acceleration')
        return [];
      const motion = level as NonNullable<TargetMark['smallest']>;
      const points = edges(mark).map((f): Point => [x.at(f), y.at(velocityOf(motion, f))]);
      if (points.some(([, at]) => at < box.y || at > box.y + box.height)) return [];
      return [{ zone, points }];
    }),
  );
  // Boundaries may lie closer than a letter is high: a name keeps off all of them.
  for (const { points } of lines) for (const each of boxesAlong(points, 0.5)) free.keepFree(each);
  const placed = lines.flatMap(({ zone, points }) => {
    const [right, at] = points.at(-1)!;
    const name = (left: number) =>
      label(right - 4 - left, at - 0.45 * size, names[zone], {
        size: size - 1,
        anchor: 'end',
        look: 'quiet',
        cleared: true,
      });
    return free.place([0, 40, 80, 140, 220].map(name)) ?? [];
  });
  return [...lines.map(({ points }) => polyline(points, 'zone')), ...placed];
}
