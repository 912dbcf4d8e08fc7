import type { Missing, Showing } from '@soundpost/core';
import type { Explain } from '../derivation/explained.ts';
import { type Html, html, joined, named, type Piece } from './html.ts';

/** How the values of a document are shown; asked of every part of it. */
export interface Setting {
  readonly showing: Showing;
  /** On a screen: makes a number one that can be opened. A document on paper has none. */
  readonly opens?: (shown: Piece, explain: Explain) => Html;
}

/** The word unknown, with what is missing where that is known. */
export function unknown(missing: readonly Missing[] = []): Html {
  if (missing.length === 0) return html`<span class="unknown">unknown</span>`;
  const all = missing.map(({ of, what }) => html`${what} of ${named(of)}`);
  return html`<span class="unknown">unknown</span>: ${joined(all)}`;
}
