import { line, type Mark, type Point, polyline } from '../drawing/drawing.ts';
import { drawnAs } from '../drawing/symbols.ts';

/** How far a symbol reaches below the place it hangs from. */
export const earthSymbolHeight = 20;

/** Protective earth in the style of IEC 60617 (from memory): three lines that shorten, in a circle. */
export function protectiveEarth(x: number, y: number): readonly Mark[] {
  return drawnAs(
    'protective earth',
    line(x, y, x, y + 8, 'ink'),
    line(x - 6, y + 8, x + 6, y + 8, 'ink'),
    line(x - 4, y + 11, x + 4, y + 11, 'ink'),
    line(x - 1.5, y + 14, x + 1.5, y + 14, 'ink'),
    { is: 'circle', x, y: y + 10.5, radius: 9, look: 'thin' },
  );
}

/** Functional, noiseless earth in the style of IEC 60617 (from memory): the same lines under half a circle. */
export function functionalEarth(x: number, y: number): readonly Mark[] {
  const arch = Array.from({ length: 13 }, (_, step): Point => {
    const angle = (Math.PI * step) / 12;
    return [x - 11 * Math.cos(angle), y + 13 - 10 * Math.sin(angle)];
  });
  return drawnAs(
    'functional earth',
    line(x, y, x, y + 9, 'ink'),
    line(x - 8, y + 9, x + 8, y + 9, 'ink'),
    line(x - 5, y + 13, x + 5, y + 13, 'ink'),
    line(x - 2, y + 17, x + 2, y + 17, 'ink'),
    polyline(arch, 'thin'),
  );
}

/** Earth in the style of IEC 60617 (from memory): three lines that shorten. */
export function plainEarth(x: number, y: number): readonly Mark[] {
  return drawnAs(
    'earth',
    line(x, y, x, y + 8, 'ink'),
    line(x - 11, y + 8, x + 11, y + 8, 'ink'),
    line(x - 7, y + 12, x + 7, y + 12, 'ink'),
    line(x - 3, y + 16, x + 3, y + 16, 'ink'),
  );
}

export function dot(x: number, y: number): Mark {
  return { is: 'circle', x, y, radius: 2.4, look: 'solid', symbol: 'junction' };
}

export function openEnd(x: number, y: number): Mark {
  return { is: 'circle', x, y, radius: 2.8, look: 'paper', symbol: 'open end' };
}
