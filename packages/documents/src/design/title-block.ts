import { type AnyField, type Design, fieldOf, type Stated, titleSheet, words } from '@soundpost/core';
import { statedShown } from '../typesetting/answers.ts';
import { type Html, html, named, type Piece } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';

/** What a document says of its own issue; nothing here is taken from a clock. */
export interface Issue {
  readonly issuedOn?: string;
  /** Of the plant file and its catalogues, as the one who issues it computes it. */
  readonly contentHash?: string;
}

const longestTitle = 160;

/** The title block: what the sheet is, of which plant, in which state. */
export function titleBlock({ plant }: Design, kind: string, issue: Issue, setting: Setting): Html {
  const values = plant.title.values as Readonly<Record<string, Stated<unknown> | undefined>>;
  const stated = Object.entries(titleSheet as Readonly<Record<string, AnyField>>).flatMap(([key, entry]) => {
    if (key === 'name') return [];
    return [
      line(words(key), values[key] === undefined ? 'not stated' : statedShown(values[key], fieldOf(entry), setting)),
    ];
  });
  return html`<header class="title-block"><div>
<p class="kind">${kind}</p>
<h1>${named(plantName(plant), longestTitle)}</h1>
</div>
<dl>${stated}${line('issued on', brief(issue.issuedOn ?? 'not stated'))}${line('content hash', brief(issue.contentHash ?? 'not stated'))}</dl>
</header>
`;
}

function brief(value: Piece): Piece {
  return typeof value === 'string' ? named(value, longestTitle) : value;
}

function line(term: string, value: Piece): Html {
  return html`<div><dt>${term}</dt><dd>${value}</dd></div>`;
}

export function plantName(plant: Design['plant']): string {
  return plant.title.values.name.known ? plant.title.values.name.value : 'Plant without a name';
}

/** `Proof report, revision A, content 3f2a…`: what stands at the foot of every sheet. */
export function footOf({ plant }: Design, kind: string, { contentHash }: Issue): string {
  const { revision } = plant.title.values;
  const parts = [kind, revision?.known === true ? `revision ${revision.value}` : 'no revision stated'];
  return [...parts, contentHash === undefined ? 'no content hash' : `content ${contentHash.slice(0, 16)}`].join(', ');
}
