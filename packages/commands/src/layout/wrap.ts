import { screenWidth } from './width.ts';

/** Spaces where a line may break: not between a number and its unit. */
const gaps = /(?<!\d) +| +(?![\p{L}%°])/u;

/**
 * A text in lines of at most `width` columns, broken at spaces; a word that is longer is broken after '/' or '-', and
 * only where it has none, anywhere. Nothing is cut off. Lines after the first begin with `hanging`.
 */
export function wrapped(text: string, width: number, hanging = ''): readonly string[] {
  const lines: string[] = [];
  for (const paragraph of text.split('\n')) wrapParagraph(paragraph, width, hanging, lines);
  return lines;
}

function wrapParagraph(paragraph: string, width: number, hanging: string, lines: string[]): void {
  const indent = /^ */.exec(paragraph)![0];
  const words = paragraph.trim().split(gaps);
  let line = indent;
  let empty = true;
  const begin = () => {
    lines.push(line.trimEnd());
    line = indent + hanging;
    empty = true;
  };
  for (const word of words) {
    let rest = word;
    while (screenWidth(line) + (empty ? 0 : 1) + screenWidth(rest) > width) {
      const room = width - screenWidth(line) - (empty ? 0 : 1);
      const whole = width - screenWidth(indent + hanging);
      // A word that fits on a line of its own is moved there whole.
      if (!empty && screenWidth(rest) <= whole) {
        begin();
        continue;
      }
      const piece = pieceOf(rest, room, empty);
      if (piece === '') {
        if (empty) break;
        begin();
        continue;
      }
      line += (empty ? '' : ' ') + piece;
      rest = rest.slice(piece.length);
      begin();
    }
    if (rest === '') continue;
    line += (empty ? '' : ' ') + rest;
    empty = false;
  }
  lines.push(line.trimEnd());
}

/** As much of a word as fits, ending after '/' where it can, else after '-'. */
function pieceOf(word: string, room: number, mustMove: boolean): string {
  const pieces: Record<string, string> = {};
  let fits = '';
  for (const sign of word) {
    if (screenWidth(fits + sign) > room) break;
    fits += sign;
    if (/[/-]/.test(sign)) pieces[sign] = fits;
  }
  const natural = pieces['/'] ?? pieces['-'] ?? '';
  if (natural !== '' && natural !== word) return natural;
  return mustMove ? fits : '';
}

/** The narrowest width in which no word is broken elsewhere than at its joints. */
export function narrowest(text: string): number {
  const pieces = text
    .split(/\n/)
    .flatMap((line) => line.trim().split(gaps))
    .flatMap((word) => word.split(/(?<=[/-])/));
  return Math.max(0, ...pieces.map(screenWidth));
}
