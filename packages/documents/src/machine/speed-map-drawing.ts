import {
  type DesignedMachine,
  type MapLine,
  quantities,
  type Showing,
  type SpeedMap,
  speedMap,
  spelledUnit,
  standsStill,
  type TrainAtSpeed,
  valueIn,
} from '@soundpost/core';
import { linearAxis, logAxis, roundDown, roundUp } from '../drawing/axis.ts';
import { between } from '../drawing/curve.ts';
import {
  type Box,
  type Drawing,
  type Label,
  label,
  type Mark,
  type Point,
  polyline,
  rectangle,
  type Width,
} from '../drawing/drawing.ts';
import { boxesAlong, placing } from '../drawing/label-placing.ts';
import { axisNumbers, frame, grid, type Plot } from '../drawing/plot.ts';
import { fitted } from '../drawing/text-extent.ts';

const layouts: Readonly<Record<Width, { width: number; plot: Box; size: number }>> = {
  wide: { width: 760, plot: { x: 58, y: 30, width: 690, height: 400 }, size: 11 },
  narrow: { width: 358, plot: { x: 44, y: 26, width: 308, height: 330 }, size: 9.5 },
};

/** Lines so far below the highest are left to the table. */
const mostDecades = 5;

/**
 * Every line over the speeds of the machine: what follows the speed full, what stands still dashed, a ring where they
 * meet. A speed that is held is drawn across them all.
 */
export function speedMapDrawing(
  machine: DesignedMachine,
  showing: Showing,
  width: Width,
  held?: TrainAtSpeed,
): Drawing | undefined {
  const found = speedMap(machine.stated.train);
  if (!found.known || found.value.along.low >= found.value.along.high) return undefined;
  const map = found.value;
  const heights = map.lines.flatMap((each) => each.points.flatMap((at) => (at.frequency > 0 ? [at.frequency] : [])));
  if (heights.length === 0) return undefined;
  const layout = layouts[width];
  const { plot: box, size } = layout;
  const name = map.along.by === 'shaft' ? 'shaft speed' : 'frequency';
  const unit = quantities[name][showing.units ?? 'metric'][0]!;
  const highest = Math.max(...heights);
  const y = logAxis(
    { low: roundDown(Math.max(Math.min(...heights), highest / 10 ** mostDecades) / 1.2), high: roundUp(highest * 1.2) },
    { from: box.y + box.height, to: box.y },
    70,
  );
  const speeds = { low: valueIn(unit, name, map.along.low), high: valueIn(unit, name, map.along.high) };
  const x = linearAxis(speeds, { from: box.x, to: box.x + box.width }, width === 'wide' ? 8 : 4);
  const plot: Plot = { box, size, x, y };
  const place = (at: number, hertz: number): Point | undefined =>
    hertz > 0 ? [x.at(valueIn(unit, name, at)), y.at(hertz)] : undefined;
  const curves = map.lines.map((each) => ({
    each,
    parts: between(
      each.points.map((point) => place(point.at, point.frequency)),
      box.y,
      box.y + box.height,
    ),
  }));
  const free = placing(box);
  for (const { parts } of curves)
    for (const part of parts) for (const along of boxesAlong(part, 1)) free.keepFree(along);
  const labels = curves.flatMap(({ each, parts }) => free.place(placesOf(parts, nameOf(each, box, size), size)) ?? []);
  return {
    width: layout.width,
    height: box.y + box.height + 2 * size + 2,
    title: `Speed map of ${machine.stated.name}`,
    description: `Frequency of ${map.lines.length} lines over ${alongWords(map)}. The meetings are in the table.`,
    marks: [
      ...grid(plot),
      ...bands(map, plot),
      ...curves.flatMap(({ each, parts }) =>
        parts.map((part) => polyline(part, standsStill(each.line) ? 'centre-line' : 'thin')),
      ),
      ...rings(map, plot, place),
      ...(held === undefined ? [] : heldMarks(held, map, plot, place)),
      frame(plot),
      ...axisNumbers(plot, ''),
      label(
        2,
        box.y - 0.9 * size,
        fitted(`Hz, over ${spelledUnit(unit)}: ${alongWords(map)}`, layout.width - 4, size - 1),
        {
          size: size - 1,
          look: 'strong',
        },
      ),
      ...labels,
    ],
  };
}

export function alongWords({ along }: SpeedMap): string {
  return along.by === 'shaft' ? `the speed of ${along.name}` : `the line frequency of ${along.name}`;
}

function nameOf({ line }: MapLine, box: Box, size: number): string {
  return fitted(line.name, box.width * 0.5, size - 1);
}

/** Above or below a line, from its right end to its left. */
function placesOf(parts: readonly (readonly Point[])[], text: string, size: number): readonly Label[] {
  const points = parts.flat();
  return [0.97, 0.75, 0.5, 0.28, 0.03].flatMap((share) => {
    const point = points[Math.floor((points.length - 1) * share)];
    if (point === undefined) return [];
    const anchor = share > 0.6 ? 'end' : share > 0.4 ? 'middle' : 'start';
    return [-0.4, 1.05].map((lift) =>
      label(point[0], point[1] + lift * size, text, { size: size - 1, anchor, cleared: true }),
    );
  });
}

/** The width of what stands still, where it has one. */
function bands({ lines }: SpeedMap, { box, y }: Plot): readonly Mark[] {
  return lines.flatMap(({ line, points }): readonly Mark[] => {
    const [first] = points;
    if (first === undefined || !standsStill(line) || !(first.high > first.low) || first.low < y.low) return [];
    const [top, bottom] = [y.at(Math.min(first.high, y.high)), y.at(first.low)];
    return [rectangle(box.x, top, box.width, bottom - top, 'window')];
  });
}

/** The speed that is held, with a dot where it meets each line. */
function heldMarks(
  { at, lines }: TrainAtSpeed,
  { along }: SpeedMap,
  { box, y }: Plot,
  place: (at: number, hertz: number) => Point | undefined,
): readonly Mark[] {
  const foot = place(at, y.low);
  if (foot === undefined || at < along.low || at > along.high) return [];
  const dots = lines.flatMap(({ frequency }): readonly Mark[] => {
    const dot = frequency.known && frequency.value >= y.low ? place(at, frequency.value) : undefined;
    return dot === undefined ? [] : [{ is: 'circle', x: dot[0], y: dot[1], radius: 3, look: 'accent-solid' }];
  });
  return [
    polyline(
      [
        [foot[0], box.y],
        [foot[0], box.y + box.height],
      ],
      'target',
    ),
    ...dots,
  ];
}

function rings(map: SpeedMap, { y }: Plot, place: (at: number, hertz: number) => Point | undefined): readonly Mark[] {
  return map.meetings.flatMap(({ inside, nearest, band }): readonly Mark[] => {
    const middle = (band.low + band.high) / 2;
    const at = place(nearest.at, middle);
    if (inside.length === 0 || at === undefined || middle < y.low || middle > y.high) return [];
    return [{ is: 'circle', x: at[0], y: at[1], radius: 3.4, look: 'ink' }];
  });
}
