import { asMarkup, type Html, html, type Piece } from './html.ts';

/** A numbered part of a document, with what is inside it. */
export interface Section {
  readonly title: Piece;
  /** May be made anew each time it is looked at. */
  readonly body: Piece;
  /** Begins a sheet of its own on paper. */
  readonly newSheet?: boolean;
  readonly within?: readonly Section[];
}

interface Placed {
  readonly section: Section;
  readonly number: string;
}

function numbered(sections: readonly Section[], before = ''): readonly Placed[] {
  return sections.map((section, index) => ({ section, number: `${before}${index + 1}` }));
}

/** The list of the sections, two levels deep, as links with the numbers the sections carry. */
export function contents(sections: readonly Section[]): Html {
  return html`<nav class="contents" aria-label="Contents">${listed(sections, '', 2)}</nav>`;
}

function listed(sections: readonly Section[], before: string, levels: number): Html {
  const lines = numbered(sections, before).map(({ section, number }) => {
    const deeper =
      levels === 1 || section.within === undefined ? undefined : listed(section.within, `${number}.`, levels - 1);
    return html`<li><a href="#s${number}"><span class="number">${number}</span> ${section.title}</a>${deeper}</li>`;
  });
  return html`<ol>${lines}</ol>`;
}

/** The sections one after another, numbered, each with its anchor. */
export function setSections(sections: readonly Section[], before = '', depth = 2): Html {
  return html`${[...sectionsInPieces(sections, before, depth)]}`;
}

/** The same piece by piece: no more than one section without others in it is held at a time. */
export function* sectionsInPieces(sections: readonly Section[], before = '', depth = 2): Generator<Html> {
  for (const { section, number } of numbered(sections, before)) {
    const open = asMarkup(`<h${depth}>`);
    const close = asMarkup(`</h${depth}>`);
    yield html`<section id="s${number}"${section.newSheet === true ? asMarkup(' class="new-sheet"') : undefined}>
${open}<span class="number">${number}</span> ${section.title}${close}
${section.body}`;
    if (section.within !== undefined) yield* sectionsInPieces(section.within, `${number}.`, depth + 1);
    yield html`</section>
`;
  }
}
