import {
  type Axis,
  axisNumbers,
  type Box,
  between,
  type Drawing,
  frame,
  grid,
  label,
  line,
  linearAxis,
  logAxis,
  type Plot,
  type Point,
  polyline,
  roundDown,
  roundUp,
  type Stretch,
  shortNumber,
  type Width,
} from '@soundpost/documents';
import type { Scale } from './working-plot.ts';

/** A result over an input, in coherent units, with how both are shown. */
export interface Curve {
  readonly title: string;
  readonly points: readonly { readonly x: number; readonly y: number | undefined }[];
  readonly stated: { readonly x: number; readonly y: number | undefined };
  readonly logarithmic: boolean;
  readonly across: Scale;
  readonly up: Scale;
  readonly symbol: string;
  readonly decimal: 'point' | 'comma';
}

const layouts: Readonly<Record<Width, { readonly width: number; readonly plot: Box; readonly size: number }>> = {
  wide: { width: 640, plot: { x: 62, y: 28, width: 566, height: 270 }, size: 12 },
  narrow: { width: 358, plot: { x: 52, y: 26, width: 300, height: 210 }, size: 11 },
};

/** The curve in its frame, and a line where the input stands. */
export function resultDrawing(curve: Curve, width: Width): Drawing {
  const { plot: box, size, width: whole } = layouts[width];
  const { across, up } = curve;
  const points = curve.points.map(({ x, y }) => ({ x: shownIn(across, x), y: y === undefined ? y : shownIn(up, y) }));
  const write = (value: number) => {
    const text = shortNumber(Number(value.toPrecision(6)));
    return curve.decimal === 'comma' ? text.replace('.', ',') : text;
  };
  const ends = { low: points[0]!.x, high: points.at(-1)!.x };
  const breadth = { from: box.x, to: box.x + box.width };
  const x =
    curve.logarithmic && ends.low > 0
      ? logAxis(ends, breadth, 7 * size, write)
      : linearAxis(ends, breadth, width === 'wide' ? 8 : 5, write);
  const heights = points.flatMap(({ y }) => (y === undefined ? [] : [y]));
  const y = heightAxis(heights, { from: box.y + box.height, to: box.y }, curve.logarithmic, write);
  const plot: Plot = { box, size, x, y };
  const drawn = points.map((each): Point | undefined => {
    const height = each.y === undefined ? undefined : y.at(each.y);
    return height === undefined || !Number.isFinite(height) ? undefined : [x.at(each.x), height];
  });
  const here = x.at(shownIn(across, curve.stated.x));
  const inside = here >= box.x - 0.1 && here <= box.x + box.width + 0.1;
  const stands = curve.stated.y === undefined ? undefined : y.at(shownIn(up, curve.stated.y));
  return {
    width: whole,
    height: box.y + box.height + 2 * size + 2,
    title: curve.title,
    description: 'The numbers stand in the table beside it.',
    marks: [
      ...grid(plot),
      ...(inside ? [line(here, box.y, here, box.y + box.height, 'target-thin')] : []),
      ...between(drawn, box.y, box.y + box.height).map((part) => polyline(part, 'curve')),
      ...(inside && stands !== undefined
        ? [{ is: 'circle', x: here, y: stands, radius: 4, look: 'accent-solid' } as const]
        : []),
      frame(plot),
      ...axisNumbers(plot, across.unit),
      label(2, box.y - 0.8 * size, up.unit === '' ? curve.symbol : `${curve.symbol}, ${up.unit}`, {
        size,
        look: 'strong',
      }),
    ],
  };
}

function shownIn({ factor, offset }: Scale, value: number): number {
  return (value - offset) / factor;
}

/** Logarithmic where the curve climbs over decades, from zero where it nearly reaches it. */
function heightAxis(
  heights: readonly number[],
  stretch: Stretch,
  logarithmic: boolean,
  write: (value: number) => string,
): Axis {
  const [least, most] = [Math.min(...heights), Math.max(...heights)];
  if (logarithmic && least > 0 && most / least > 15) {
    return logAxis({ low: roundDown(least), high: roundUp(most) }, stretch, 70, write);
  }
  // What differs by rounding alone is one value.
  const size = Math.max(Math.abs(least), Math.abs(most));
  const room = most - least > 1e-6 * size ? 0.08 * (most - least) : size * 0.2 || 1;
  const low = least >= 0 && least < 0.4 * most ? 0 : least - room;
  return linearAxis({ low, high: most + room }, stretch, 5, write);
}
