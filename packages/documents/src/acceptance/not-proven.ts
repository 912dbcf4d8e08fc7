import { type Acceptance, type Missing, type UnprovenTogether, unprovenTogether, waysToRecord } from '@soundpost/core';
import { type Html, html, joined, named } from '../typesetting/html.ts';
import type { Section } from '../typesetting/section.ts';
import { table } from '../typesetting/table.ts';

/** What no record proves, which records would, and how each of them is made. */
export function notProvenSection({ compared, questions }: Acceptance): Section {
  const { unproven } = compared;
  return {
    title: 'What could not be proven',
    newSheet: true,
    body: html`<p>What stands here is neither right nor wrong: no record of this acceptance tells. Whoever signs takes it as it is, or has the records made.</p>
${table({
  caption: `${unproven.length} checks, by the records that would answer them`,
  group: ({ at }: UnprovenTogether) => named(at),
  columns: [
    { head: 'Record that would answer', cell: ({ needs }: UnprovenTogether) => needs.join(', or ') },
    { head: 'Checks', cell: ({ checks }) => checks.join('; ') },
  ],
  rows: unprovenTogether(unproven),
  folds: true,
  empty: 'Every check of every recorded point was answered.',
})}
${unrecorded({ compared })}
${asked(questions)}
${
  unproven.length === 0
    ? undefined
    : html`<h3>How these records are made</h3>
<dl class="facts">${waysToRecord(unproven).map(({ name, how }) => html`<dt>${name}</dt><dd>${how}</dd>`)}</dl>`
}`,
  };
}

function unrecorded({ compared }: Pick<Acceptance, 'compared'>): Html | undefined {
  const { unrecorded: points } = compared;
  if (points.length === 0) return undefined;
  return html`<p>No record at all was made at: ${joined(points.map((each) => named(each)))}.</p>`;
}

function asked(questions: readonly Missing[]): Html | undefined {
  if (questions.length === 0) return undefined;
  const whats = [...new Set(questions.map(({ what }) => what))];
  return html`<h3>Asked, and answered by nobody</h3>
<ul>${whats.map(
    (what) =>
      html`<li>${what}: ${joined(
        questions.filter((each) => each.what === what).map(({ of }) => named(of)),
        '; ',
      )}</li>`,
  )}</ul>`;
}
