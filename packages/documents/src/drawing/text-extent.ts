import type { Box, Label } from './drawing.ts';

/** Widths of letters in parts of the size, a little generous, since the face that will be used is not known here. */
const groups: readonly (readonly [RegExp, number])[] = [
  [/[ijl|'’.,:;!·]/u, 0.34],
  [/[ftrI()[\]/ \-–\u2007\u2008]/u, 0.42],
  [/[0-9]/u, 0.64],
  [/[⁰¹²³⁴-⁹⁻]/u, 0.48],
  [/[mwMW%@…—]/u, 0.98],
  [/[A-Z√Ωµ×±\u2212+<>=≤≥→]/u, 0.76],
  [/[\u0021-\u024F]/u, 0.62],
];

/** What is wider than any letter of the Latin script: ideographs, pictures. */
const widest = 1.1;

/** Of the signs below 256, which most texts are made of; found once, since every label is measured many times. */
const usualWidths: readonly number[] = Array.from({ length: 256 }, (_, code) => widthOf(String.fromCharCode(code)));

function signWidth(sign: string): number {
  return (sign.length === 1 ? usualWidths[sign.charCodeAt(0)] : undefined) ?? widthOf(sign);
}

function widthOf(sign: string): number {
  return groups.find(([pattern]) => pattern.test(sign))?.[1] ?? widest;
}

export function textWidth(text: string, size: number): number {
  let width = 0;
  for (const sign of text) width += signWidth(sign);
  return width * size;
}

/** The text with its end left out so that it fits. */
export function fitted(text: string, width: number, size: number): string {
  const room = width / size;
  const dots = signWidth('…');
  let used = 0;
  let kept = '';
  let keptWithDots = '';
  for (const sign of text) {
    used += signWidth(sign);
    if (used > room) return keptWithDots === '' ? '' : `${keptWithDots.trimEnd()}…`;
    kept += sign;
    if (used + dots <= room) keptWithDots = kept;
  }
  return text;
}

/** Lines of words that fit a width; what is left after the last line is cut. */
export function wrapped(text: string, width: number, size: number, most = Number.POSITIVE_INFINITY): readonly string[] {
  const lines: string[] = [];
  for (const { piece, glued } of text.split(' ').flatMap((word) => pieces(word, width, size))) {
    const last = lines.at(-1);
    const longer = `${last ?? ''}${glued ? '' : ' '}${piece}`;
    const full = lines.length === most;
    if (last !== undefined && (full || textWidth(longer, size) <= width)) {
      lines[lines.length - 1] = longer;
      if (full && textWidth(longer, size) > width) break;
    } else lines.push(piece);
  }
  return lines.map((each) => fitted(each, width, size));
}

interface WordPiece {
  readonly piece: string;
  /** Goes on without a space. */
  readonly glued: boolean;
}

/** A word that is wider than a line is parted behind its hyphens and strokes, and where it has none between any letters. */
function pieces(word: string, width: number, size: number): readonly WordPiece[] {
  if (textWidth(word, size) <= width) return [{ piece: word, glued: false }];
  const parts = word.split(/(?<=[-–/_.])/u).flatMap((part) => lettersThatFit(part, width, size));
  return parts.map((piece, index) => ({ piece, glued: index > 0 }));
}

function lettersThatFit(part: string, width: number, size: number): readonly string[] {
  const found: string[] = [];
  for (const sign of part) {
    const last = found.at(-1);
    if (last !== undefined && textWidth(last + sign, size) <= width) found[found.length - 1] = last + sign;
    else found.push(sign);
  }
  return found;
}

const above = 0.8;
const below = 0.24;

/** Letters that are set bold are so much wider. */
export const boldness = 1.08;

/** The box a label fills, by its widest likely face. */
export function labelBox({ x, y, text, size, anchor, look }: Label): Box {
  const width = textWidth(text, size) * (look === 'strong' || look === 'accent' ? boldness : 1);
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { x: left, y: y - above * size, width, height: (above + below) * size };
}

export function overlap(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

export function inside(inner: Box, outer: Box): boolean {
  return (
    inner.x >= outer.x &&
    inner.y >= outer.y &&
    inner.x + inner.width <= outer.x + outer.width &&
    inner.y + inner.height <= outer.y + outer.height
  );
}
