import { asMarkup, type Html, html, type Piece } from './html.ts';

/** A numbered part of a document, with what is inside it. */
export interface Section {
  readonly title: Piece;
  readonly body: Piece;
  /** Begins a sheet of its own on paper. */
  readonly newSheet?: boolean;
  readonly within?: readonly Section[];
}

interface Placed extends Section {
  readonly number: string;
}

function numbered(sections: readonly Section[], before = ''): readonly Placed[] {
  return sections.map((section, index) => ({ ...section, number: `${before}${index + 1}` }));
}

/** The list of the sections, two levels deep, as links with the numbers the sections carry. */
export function contents(sections: readonly Section[]): Html {
  return html`<nav class="contents" aria-label="Contents">${listed(sections, '', 2)}</nav>`;
}

function listed(sections: readonly Section[], before: string, levels: number): Html {
  const lines = numbered(sections, before).map((section) => {
    const deeper =
      levels === 1 || section.within === undefined
        ? undefined
        : listed(section.within, `${section.number}.`, levels - 1);
    return html`<li><a href="#s${section.number}"><span class="number">${section.number}</span> ${section.title}</a>${deeper}</li>`;
  });
  return html`<ol>${lines}</ol>`;
}

/** The sections one after another, numbered, each with its anchor. */
export function setSections(sections: readonly Section[], before = '', depth = 2): Html {
  const all = numbered(sections, before).map((section) => {
    const open = asMarkup(`<h${depth}>`);
    const close = asMarkup(`</h${depth}>`);
    const inner =
      section.within === undefined ? undefined : setSections(section.within, `${section.number}.`, depth + 1);
    return html`<section id="s${section.number}"${section.newSheet === true ? asMarkup(' class="new-sheet"') : undefined}>
${open}<span class="number">${section.number}</span> ${section.title}${close}
${section.body}${inner}</section>
`;
  });
  return html`${all}`;
}
