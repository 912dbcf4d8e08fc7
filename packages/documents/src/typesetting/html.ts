import { cut, escaped } from './inert-text.ts';

const made: unique symbol = Symbol('markup');

/** Markup this house wrote. A text from a file is never one: the mark cannot stand in a file. */
export interface Html {
  readonly [made]: true;
  readonly markup: string;
}

/** What may stand in a template: markup as it is, text escaped, a list piece by piece, nothing as nothing. */
export type Piece = Html | string | number | undefined | readonly Piece[];

/** Longer than any sentence of ours; a longer text is cut, and says so. */
const longestText = 1200;

export function markupOf(piece: Piece): string {
  if (piece === undefined) return '';
  if (typeof piece === 'number') return String(piece);
  if (typeof piece === 'string') return escaped(cut(piece, longestText));
  return isHtml(piece) ? piece.markup : piece.map(markupOf).join('');
}

function isHtml(piece: Html | readonly Piece[]): piece is Html {
  return made in piece;
}

/** Markup from a template: what is written in it stands, what is put into it is escaped. */
export function html(written: TemplateStringsArray, ...pieces: readonly Piece[]): Html {
  return asMarkup(written.reduce((text, part, index) => text + markupOf(pieces[index - 1]) + part));
}

/** Takes a text for markup. Only for what this package made itself. */
export function asMarkup(markup: string): Html {
  return { [made]: true, markup };
}

/** Pieces with something between them. */
export function joined(pieces: readonly Piece[], between: Piece = ', '): Html {
  return asMarkup(pieces.map(markupOf).join(markupOf(between)));
}

const longestName = 120;

/**
 * A name or a path of names from a file: isolated, so that its direction of writing stays its own, cut where it is very
 * long, and free to break at its slashes.
 */
export function named(name: string, most: number = longestName): Html {
  return html`<bdi>${joined(cut(name, most).split('/'), html`/<wbr>`)}</bdi>`;
}
