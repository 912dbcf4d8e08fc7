import type { Axis } from './axis.ts';
import { type Box, type Label, label, line, type Mark, rectangle } from './drawing.ts';

/** A frame with an axis of frequency below and one of something else at its left. */
export interface Plot {
  readonly box: Box;
  readonly x: Axis;
  readonly y: Axis;
  /** Size of the letters of the axes. */
  readonly size: number;
}

/** The grid: fine lines at every mark, firmer ones at the main marks. */
export function grid({ box, x, y }: Plot): readonly Mark[] {
  const right = box.x + box.width;
  const bottom = box.y + box.height;
  return [
    ...x.ticks.map((tick) => line(tick.at, box.y, tick.at, bottom, tick.main ? 'grid' : 'grid-fine')),
    ...y.ticks.map((tick) => line(box.x, tick.at, right, tick.at, tick.main ? 'grid' : 'grid-fine')),
  ];
}

export function frame({ box }: Plot): Mark {
  return rectangle(box.x, box.y, box.width, box.height, 'frame');
}

/** The numbers at both axes; the unit of frequency takes the place of the last number that would touch it. */
export function axisNumbers({ box, x, y, size }: Plot, unit = 'Hz'): readonly Label[] {
  const bottom = box.y + box.height;
  const right = box.x + box.width;
  const below = x.ticks.flatMap((tick) =>
    tick.text === undefined || tick.at > right - 2.6 * size
      ? []
      : [label(tick.at, bottom + 1.5 * size, tick.text, { size, anchor: 'middle' })],
  );
  const beside = y.ticks.flatMap((tick) =>
    tick.text === undefined
      ? []
      : [label(box.x - 0.5 * size, tick.at + 0.35 * size, tick.text, { size, anchor: 'end' })],
  );
  return [...below, label(right, bottom + 1.5 * size, unit, { size, anchor: 'end', look: 'quiet' }), ...beside];
}
