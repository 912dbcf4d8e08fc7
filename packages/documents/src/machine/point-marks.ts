import type { Looks, PointPlace } from '@soundpost/core';
import { type Label, label, line, type Mark, type Point, type Polyline, polyline } from '../drawing/drawing.ts';
import { drawnAs } from '../drawing/symbols.ts';
import { wrapped } from '../drawing/text-extent.ts';

const radius = 9.5;
const tagLetters = 10.5;
const step = 27;
const rowHeight = 25;

/** The points at one element, as numbered marks hung under its symbol. */
export interface HungPoints {
  /** From the symbol down to the marks; what a name must not be crossed by. */
  readonly drop: Polyline;
  readonly marks: readonly Mark[];
}

/** How much room the marks of a row of elements take below it, by the most points any of them has. */
export function roomForPoints(most: number, column: number): number {
  return most === 0 ? 0 : Math.ceil(most / perLine(column)) * rowHeight + 12;
}

function perLine(column: number): number {
  return Math.max(1, Math.floor((column - 2) / step));
}

/** Hangs points under a symbol that ends at a height; `top` is where the room for the marks of the row begins. */
export function hungPoints(
  places: readonly PointPlace[],
  x: number,
  ends: number,
  top: number,
  column: number,
): HungPoints {
  const inLine = Math.min(places.length, perLine(column));
  const knot: Point = [x, top];
  const centre = (index: number): Point => [
    x + ((index % inLine) - (inLine - 1) / 2) * step,
    top + 18 + Math.floor(index / inLine) * rowHeight,
  ];
  const links = places.map((_, index) => {
    const from = index < inLine ? knot : shortened(centre(index), centre(index - inLine));
    const to = shortened(from, centre(index));
    return line(...from, ...to, 'thin');
  });
  const tags = places.flatMap((place, index) => tag(place, centre(index)));
  return { drop: line(x, ends, x, top, 'thin'), marks: [...links, ...tags] };
}

/** The end of a link on the ring about `to`. */
function shortened(from: Point, to: Point): Point {
  const [across, down] = [to[0] - from[0], to[1] - from[1]];
  const kept = 1 - radius / Math.hypot(across, down);
  return [from[0] + across * kept, from[1] + down * kept];
}

/** A number in a ring, with the direction the transducer looks where its statement says it. */
function tag({ number, looks }: PointPlace, [x, y]: Point): readonly Mark[] {
  return drawnAs(
    'measuring point',
    { is: 'circle', x, y, radius, look: 'paper' },
    ...(looks === undefined ? [] : directions[looks](x, y)),
    label(x, y + 3.8, String(number), { size: tagLetters, anchor: 'middle', look: 'strong' }),
  );
}

const directions: Readonly<Record<Looks, (x: number, y: number) => readonly Mark[]>> = {
  vertical: (x, y) => [pointer(x, y - radius - 5, x - 3.6, y - radius, x + 3.6, y - radius)],
  axial: (x, y) => [pointer(x + radius + 5, y, x + radius, y - 3.6, x + radius, y + 3.6)],
  // Out of the sheet: a second ring.
  horizontal: (x, y) => [{ is: 'circle', x, y, radius: radius + 2.4, look: 'thin' }],
};

function pointer(...[x1, y1, x2, y2, x3, y3]: [number, number, number, number, number, number]): Polyline {
  return polyline(
    [
      [x1, y1],
      [x2, y2],
      [x3, y3],
    ],
    'solid',
    true,
  );
}

/** From which side each point is seen and how the shaft turns seen from there, as stated; what is not stated is said. */
export function viewWords(places: readonly PointPlace[]): readonly string[] {
  const ofWords = new Map<string, number[]>();
  for (const place of places) {
    const words = `${place.seen ?? 'side it is seen from not stated'}, rotation ${place.rotation ?? 'not stated'}`;
    ofWords.set(words, [...(ofWords.get(words) ?? []), place.number]);
  }
  const unplaced = places.filter((each) => each.on === undefined).map((each) => each.number);
  return [
    ...[...ofWords].map(([words, numbers]) => `${numbers.join(', ')}: ${words}`),
    ...(unplaced.length === 0 ? [] : [`${unplaced.join(', ')}: place not stated on one element`]),
  ];
}

/** Those words as lines of a drawing from a height on. */
export function viewLabels(places: readonly PointPlace[], top: number, whole: number, size: number): readonly Label[] {
  const lines = viewWords(places).flatMap((words) => wrapped(words, whole * 0.94 - 16, size, 2));
  const most = 6;
  const shown = lines.length > most ? [...lines.slice(0, most - 1), 'the others: in the table'] : lines;
  return shown.map((text, index) => label(8, top + (index + 1) * 1.3 * size, text, { size, look: 'quiet' }));
}
