import type { SymbolName } from './symbols.ts';

/** How a line or face looks; the style sheet has one rule for each. */
export const looks = [
  'frame',
  'grid',
  'grid-fine',
  'slant-acceleration',
  'slant-displacement',
  'target',
  'target-thin',
  'target-face',
  'floor',
  'floor-band',
  'ceiling',
  'curve',
  'curve-second',
  'curve-third',
  'curve-fourth',
  'usable',
  'zone',
  'window',
  'ink',
  'thin',
  'centre-line',
  'hatched',
  'solid',
  'paper',
  'accent-solid',
] as const;
export type Look = (typeof looks)[number];

export const textLooks = ['plain', 'small', 'quiet', 'strong', 'italic', 'accent'] as const;
export type TextLook = (typeof textLooks)[number];

export type Point = readonly [x: number, y: number];

interface OfSymbol {
  /** The symbol it is a stroke of; absent from lines, frames and texts that are none. */
  readonly symbol?: SymbolName;
}

export interface Polyline extends OfSymbol {
  readonly is: 'polyline';
  readonly points: readonly Point[];
  readonly look: Look;
  readonly closed?: boolean;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Rectangle extends Box, OfSymbol {
  readonly is: 'rectangle';
  readonly look: Look;
  readonly radius?: number;
}

export interface Circle extends OfSymbol {
  readonly is: 'circle';
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly look: Look;
}

/** One line of text on its baseline. */
export interface Label extends OfSymbol {
  readonly is: 'label';
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly look: TextLook;
  /** Paper behind the letters, where lines pass under them. */
  readonly cleared?: boolean;
}

export type Mark = Polyline | Rectangle | Circle | Label;

/** A drawing in user units; its title and description stand for it where it cannot be seen. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly title: string;
  readonly description: string;
  readonly marks: readonly Mark[];
}

export function line(x1: number, y1: number, x2: number, y2: number, look: Look): Polyline {
  return {
    is: 'polyline',
    points: [
      [x1, y1],
      [x2, y2],
    ],
    look,
  };
}

export function polyline(points: readonly Point[], look: Look, closed = false): Polyline {
  return { is: 'polyline', points, look, closed };
}

export function rectangle(x: number, y: number, width: number, height: number, look: Look, radius?: number): Rectangle {
  return { is: 'rectangle', x, y, width, height, look, ...(radius === undefined ? {} : { radius }) };
}

export function label(
  x: number,
  y: number,
  text: string,
  options: { size?: number; anchor?: Label['anchor']; look?: TextLook; cleared?: boolean } = {},
): Label {
  const { size = 12, anchor = 'start', look = 'plain', cleared } = options;
  return { is: 'label', x, y, text, size, anchor, look, ...(cleared === undefined ? {} : { cleared }) };
}

/** How wide a drawing is set: for a desk and paper, or for a telephone. */
export type Width = 'wide' | 'narrow';
