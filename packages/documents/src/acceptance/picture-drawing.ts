import type { Picture, PictureAxis, PictureCurve } from '@soundpost/core';
import { type Axis, linearAxis, logAxis } from '../drawing/axis.ts';
import { between } from '../drawing/curve.ts';
import {
  type Box,
  type Drawing,
  type Label,
  type Look,
  label,
  line,
  type Mark,
  type Point,
  polyline,
  rectangle,
  type Width,
} from '../drawing/drawing.ts';
import { boxesAlong, placing } from '../drawing/label-placing.ts';
import { axisNumbers, frame, grid, type Plot } from '../drawing/plot.ts';

const layouts: Readonly<Record<Width, { width: number; plot: Box; size: number }>> = {
  wide: { width: 560, plot: { x: 58, y: 28, width: 494, height: 180 }, size: 11.5 },
  narrow: { width: 358, plot: { x: 50, y: 26, width: 302, height: 170 }, size: 10.5 },
};

const looks: Readonly<Record<PictureCurve['is'], Look>> = {
  found: 'curve',
  expected: 'target-thin',
  limit: 'curve-third',
};

/** A picture of a record: what was found as a firm line, what was expected as a band or a line of the accent. */
export function pictureDrawing(picture: Picture, width: Width): Drawing {
  const { width: all, plot: box, size } = layouts[width];
  const x = axisOf(picture.x, { from: box.x, to: box.x + box.width }, 8 * size);
  const y = axisOf(picture.y, { from: box.y + box.height, to: box.y }, 3 * size);
  const plot: Plot = { box, size, x, y };
  const drawn = picture.curves.map((curve) => ({ curve, parts: partsOf(curve, x, y, box) }));
  const free = placing(box);
  for (const { parts } of drawn) for (const part of parts) for (const each of boxesAlong(part, 1)) free.keepFree(each);
  const marks = picture.marks.flatMap(({ called, x: at }) => {
    const place = x.at(at);
    if (place < box.x || place > box.x + box.width) return [];
    const named = [0, 1, 2, 3].flatMap((row) => {
      const height = box.y + (1.2 + 1.25 * row) * size;
      return [
        label(place + 3, height, called, { size: size - 1, cleared: true }),
        label(place - 3, height, called, { size: size - 1, anchor: 'end', cleared: true }),
      ];
    });
    return [line(place, box.y, place, box.y + box.height, 'zone'), free.place(named)].filter(
      (each): each is NonNullable<typeof each> => each !== undefined,
    );
  });
  const names = drawn.flatMap(({ curve, parts }) =>
    curve.is === 'found' || parts.length === 0 ? [] : (free.place(placesAlong(parts.flat(), curve.name, size)) ?? []),
  );
  return {
    width: all,
    height: box.y + box.height + 2 * size + 4,
    title: `${picture.title}: ${picture.of}`,
    description: `${picture.y.name} over ${picture.x.name}. The numbers stand in the table beside it.`,
    marks: [
      ...grid(plot),
      ...picture.bands.map(({ along, low, high }) => bandBox(along, low, high, plot)),
      ...drawn.flatMap(({ curve, parts }): readonly Mark[] =>
        curve.apart === true
          ? curve.points.map(
              ([at, value]): Mark => ({ is: 'circle', x: x.at(at), y: y.at(value), radius: 3.2, look: 'solid' }),
            )
          : parts.map((part) => polyline(part, looks[curve.is])),
      ),
      ...marks,
      frame(plot),
      ...axisNumbers(plot, picture.x.unit),
      label(2, box.y - 0.8 * size, `${picture.y.name}, ${picture.y.unit}`, { size: size - 0.5, look: 'strong' }),
      ...names,
    ],
  };
}

function axisOf({ low, high, scale }: PictureAxis, stretch: { from: number; to: number }, roomy: number): Axis {
  return scale === 'log'
    ? logAxis({ low, high }, stretch, roomy)
    : linearAxis({ low, high }, stretch, Math.max(3, Math.floor(Math.abs(stretch.to - stretch.from) / roomy)));
}

function partsOf({ points }: PictureCurve, x: Axis, y: Axis, box: Box) {
  return between(
    points.map(([at, value]): Point | undefined => {
      const point: Point = [x.at(at), y.at(value)];
      return point.every(Number.isFinite) ? point : undefined;
    }),
    box.y,
    box.y + box.height,
  );
}

function bandBox(along: 'x' | 'y', low: number, high: number, { box, x, y }: Plot): Mark {
  const inside = (value: number, from: number, to: number) => Math.min(Math.max(value, from), to);
  if (along === 'x') {
    const [left, right] = [low, high].map((each) => inside(x.at(each), box.x, box.x + box.width)) as [number, number];
    return rectangle(left, box.y, right - left, box.height, 'window');
  }
  const [bottom, top] = [low, high].map((each) => inside(y.at(each), box.y, box.y + box.height)) as [number, number];
  return rectangle(box.x, top, box.width, bottom - top, 'window');
}

function placesAlong(points: readonly Point[], text: string, size: number): readonly Label[] {
  return [0.8, 0.6, 0.4, 0.95, 0.15].flatMap((share) => {
    const point = points[Math.floor((points.length - 1) * share)];
    if (point === undefined) return [];
    return [-0.5, 1.2].map((lift) =>
      label(point[0], point[1] + lift * size, text, { size: size - 1, anchor: 'end', look: 'quiet', cleared: true }),
    );
  });
}
