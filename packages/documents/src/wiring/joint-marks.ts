import { type Label, type Look, label, line, type Mark, rectangle } from '../drawing/drawing.ts';
import { drawnAs } from '../drawing/symbols.ts';
import { textWidth } from '../drawing/text-extent.ts';
import { dot, openEnd } from './earth-symbols.ts';
import type { Joint } from './joints.ts';

/** Numbers of the openings that end the ground loops, by the name of the conductor that is opened. */
export type Openings = ReadonlyMap<string, string>;

export const smallLetters = 11.5;

export function small(x: number, y: number, text: string, options: Partial<Pick<Label, 'anchor' | 'look'>> = {}) {
  return label(x, y, text, { size: smallLetters, ...options });
}

/** Where a joint is drawn: between two places of one height, and on which side the number of its opening stands. */
interface Place {
  readonly from: number;
  readonly to: number;
  readonly y: number;
  readonly look: Look;
  readonly side: 'above' | 'below';
  /** Where it is interrupted, or opened; the middle where nothing is said. */
  readonly at?: number;
}

/** A joint that conducts, a gap, or a question mark in one. */
export function jointMarks(joint: Joint | undefined, place: Place, openings: Openings): readonly Mark[] {
  if (joint === undefined) return [];
  const { from, to, y, look, side } = place;
  const at = place.at ?? (from + to) / 2;
  switch (joint.state) {
    case 'joined':
      return [
        line(from, y, to, y, look),
        dot(from, y),
        dot(to, y),
        ...openingMarks(openings.get(joint.name), at, y, side),
      ];
    case 'apart':
      return [line(from, y, at - 6, y, look), line(at + 6, y, to, y, look), openEnd(at - 6, y), openEnd(at + 6, y)];
    case 'unknown':
      return [
        line(from, y, at - 8, y, look),
        line(at + 8, y, to, y, look),
        label(at, y + 4, '?', { size: 12, anchor: 'middle', look: 'strong' }),
      ];
  }
}

/** Two strokes across a conductor, and the number of the opening. */
export function openingMarks(
  number: string | undefined,
  x: number,
  y: number,
  side: 'above' | 'below' | 'right',
): readonly Mark[] {
  if (number === undefined) return [];
  const width = Math.max(16, textWidth(number, smallLetters) + 8);
  const [middleX, middleY] = {
    above: [x, y - 16],
    below: [x, y + 16],
    right: [x + 14 + width / 2, y],
  }[side] as [number, number];
  const strokes =
    side === 'right'
      ? [line(x - 6, y + 1, x + 6, y - 5, 'ink'), line(x - 6, y + 5, x + 6, y - 1, 'ink')]
      : [line(x - 5, y + 6, x + 1, y - 6, 'ink'), line(x - 1, y + 6, x + 5, y - 6, 'ink')];
  return drawnAs(
    'opening',
    ...strokes,
    rectangle(middleX - width / 2, middleY - 8, width, 16, 'target-thin', 8),
    label(middleX, middleY + 3.5, number, { size: smallLetters, anchor: 'middle' }),
  );
}
