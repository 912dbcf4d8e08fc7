import type { Box, Label } from './drawing.ts';
import { inside, labelBox, overlap } from './text-extent.ts';

/** Places for labels that are still free. Earlier labels have the better right. */
export interface Placing {
  /** Sets the first of these places that is free and inside the bounds; none where all are taken. */
  place(candidates: Iterable<Label>): Label | undefined;
  /** Keeps a box free of labels. */
  keepFree(box: Box): void;
  readonly placed: readonly Label[];
}

export function placing(bounds: Box, clearance = 1.5): Placing {
  const taken: Box[] = [];
  const placed: Label[] = [];
  return {
    placed,
    keepFree: (box) => taken.push(box),
    place: (candidates) => {
      for (const candidate of candidates) {
        const box = labelBox(candidate);
        if (candidate.text === '' || !inside(box, bounds)) continue;
        const wider = grown(box, clearance);
        if (taken.some((each) => overlap(each, wider))) continue;
        taken.push(box);
        placed.push(candidate);
        return candidate;
      }
      return undefined;
    },
  };
}

/** The boxes along a line that labels should keep off, so that no curve runs through a word. */
export function boxesAlong(points: readonly (readonly [number, number])[], thickness = 3): readonly Box[] {
  const boxes: Box[] = [];
  for (let index = 1; index < points.length; index++) {
    const [[x1, y1], [x2, y2]] = [points[index - 1]!, points[index]!];
    const pieces = Math.max(1, Math.ceil(Math.max(Math.abs(x2 - x1), Math.abs(y2 - y1)) / 8));
    for (let piece = 0; piece < pieces; piece++) {
      const [left, right] = [x1 + ((x2 - x1) * piece) / pieces, x1 + ((x2 - x1) * (piece + 1)) / pieces];
      const [top, bottom] = [y1 + ((y2 - y1) * piece) / pieces, y1 + ((y2 - y1) * (piece + 1)) / pieces];
      boxes.push(
        grown(
          {
            x: Math.min(left, right),
            y: Math.min(top, bottom),
            width: Math.abs(right - left),
            height: Math.abs(bottom - top),
          },
          thickness / 2,
        ),
      );
    }
  }
  return boxes;
}

function grown(box: Box, by: number): Box {
  return { x: box.x - by, y: box.y - by, width: box.width + 2 * by, height: box.height + 2 * by };
}
