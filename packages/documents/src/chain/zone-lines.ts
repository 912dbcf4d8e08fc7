import type { DesignedPoint } from '@soundpost/core';
import { label, type Mark, type Point, polyline } from '../drawing/drawing.ts';
import type { Placing } from '../drawing/label-placing.ts';
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
  return held.flatMap((mark) =>
    (['ab', 'bc', 'cd'] as const).flatMap((zone): readonly Mark[] => {
      const level = boundaries.value[zone];
      if (level.quantity !== 'velocity' && level.quantity !== 'displacement' && level.quantity !== 'acceleration')
        return [];
      const motion = level as NonNullable<TargetMark['smallest']>;
      const points = edges(mark).map((f): Point => [x.at(f), y.at(velocityOf(motion, f))]);
      if (points.some(([, at]) => at < box.y || at > box.y + box.height)) return [];
      const [right] = points.slice(-1);
      const name = (at: number) =>
        label(right![0] - 4 - at, right![1] - 2, names[zone], {
          size: size - 1,
          anchor: 'end',
          look: 'quiet',
          cleared: true,
        });
      const placed = free.place([name(0), name(40), name(80), name(140), name(220)]);
      return [polyline(points, 'zone'), ...(placed === undefined ? [] : [placed])];
    }),
  );
}
