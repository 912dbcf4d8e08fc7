import { type Html, html, type Piece } from '../typesetting/html.ts';
import type { Drawing, Width } from './drawing.ts';
import { svg } from './svg.ts';

/** A drawing that can be set for a desk and for a telephone. */
export type Drawn = (width: Width) => Drawing;

/** A drawing with its caption: the wide setting on desk and paper, the narrow one on a telephone. */
export function figure(id: string, drawn: Drawn, caption: Piece, beside?: Piece): Html {
  const drawings = html`<div class="wide">${svg(drawn('wide'), `${id}-w`)}</div>
<div class="narrow">${svg(drawn('narrow'), `${id}-n`)}</div>`;
  return html`<figure class="${beside === undefined ? 'alone' : 'with-table'}"><div class="drawn">${drawings}<figcaption>${caption}</figcaption></div>
${beside === undefined ? undefined : html`<div class="beside">${beside}</div>`}</figure>
`;
}
