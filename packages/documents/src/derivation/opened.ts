import { asMarkup, type Html, html, type Piece } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';
import type { Explain, Explained } from './explained.ts';

/** The number as it stands on paper; on a screen, as a button that opens what is behind it. */
export function opened(shown: Piece, explain: Explain | undefined, { opens }: Setting): Piece {
  return opens === undefined || explain === undefined ? shown : opens(shown, explain);
}

/** Takes down what each number opens to while a sheet is set, so that it can be told when one is opened. */
export class Openings {
  readonly #all: Explain[] = [];

  readonly opens = (shown: Piece, explain: Explain): Html => {
    const number = this.#all.push(explain) - 1;
    return html`<button type="button" class="opens" aria-haspopup="dialog" data-opens="${asMarkup(String(number))}">${shown}</button>`;
  };

  get count(): number {
    return this.#all.length;
  }

  /** What the number of that place opens to; nothing where the sheet has no such number. */
  at(number: number): Explained | undefined {
    return this.#all[number]?.();
  }
}
