import { type Acceptance, fieldOf, type Stated, sessionSheet, words } from '@soundpost/core';
import { plantName } from '../design/title-block.ts';
import { findingList } from '../finding/findings.ts';
import { statedShown } from '../typesetting/answers.ts';
import { asMarkup, type Html, html, named, type Piece } from '../typesetting/html.ts';
import { page } from '../typesetting/page.ts';
import { contents, type Section, setSections } from '../typesetting/section.ts';
import type { Setting } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';
import { sign } from '../typesetting/verdict-shape.ts';
import { handedBackBody } from './handed-back.ts';
import type { AcceptanceIssue } from './issue-of-acceptance.ts';
import { notProvenSection } from './not-proven.ts';
import { pointSections, pointSummary } from './points.ts';
import { recordingsSection } from './recordings.ts';

const kind = 'Acceptance file';

/**
 * An acceptance as one file that any browser opens and prints: what was accepted against what, every record, every check,
 * what could not be proven, a block for signatures, and the data itself with its hash. Same acceptance, same bytes.
 */
export function acceptanceDocument(accepted: Acceptance, issue: AcceptanceIssue): string {
  const setting: Setting = { showing: issue.units === undefined ? {} : { units: issue.units } };
  const { revision } = accepted.design.plant.title.values;
  const sections: readonly Section[] = [
    { title: 'Verdict', body: html`${verdictWords(accepted, issue)}${pointSummary(accepted)}` },
    { title: 'Signatures', body: signatures },
    recordingsSection(accepted.recordings, setting),
    {
      title: 'Contradictions between header, data and stated facts',
      body: findingList(
        accepted.findings,
        setting,
        'Head and data of every recording agree with each other and with what was stated of them, as far as they were compared.',
      ),
    },
    { title: 'Points', body: '', newSheet: true, within: pointSections(accepted, setting) },
    { title: 'Handed back to the design', body: handedBackBody(accepted.handedBack, setting), newSheet: true },
    notProvenSection(accepted),
    { title: 'Caution', body: caution },
    { title: 'The data of this file, and its hash', body: dataBody(issue) },
  ];
  return page({
    title: `${kind}: ${plantName(accepted.design.plant)}`,
    foot: `${kind}, ${revision?.known === true ? `revision ${revision.value}` : 'no revision stated'}, data ${issue.dataHash.slice(0, 16)}`,
    body: html`${titleBlock(accepted, issue, setting)}${contents(sections)}
<div class="acceptance">
${setSections(sections)}</div>
${dataElement(issue)}`,
  });
}

function titleBlock({ design, session }: Acceptance, issue: AcceptanceIssue, setting: Setting): Html {
  const { title, ...head } = session.head.values as Readonly<Record<string, Stated<unknown> | undefined>>;
  const { revision } = design.plant.title.values;
  const fields = sessionSheet as Readonly<Record<string, (typeof sessionSheet)[keyof typeof sessionSheet]>>;
  const lines: readonly (readonly [string, Piece])[] = [
    ['accepted against', html`design of ${named(plantName(design.plant))}`],
    ['revision', revision?.known === true ? named(revision.value) : 'not stated'],
    ['content hash of the design', named(issue.contentHash, 160)],
    ['SHA-256 of the records file', named(issue.recordsHash, 160)],
    ...Object.entries(head)
      .filter(([, entry]) => entry !== undefined)
      .map(
        ([key, entry]) =>
          [recordedWords[key] ?? words(key), statedShown(entry, fieldOf(fields[key]! as never), setting)] as const,
      ),
    ['accepted on', issue.acceptedOn ?? 'not stated'],
    ['hash of the data of this file', named(issue.dataHash, 160)],
  ];
  return html`<header class="title-block"><div>
<p class="kind">${kind}</p>
<h1>${named(title?.known === true ? String(title.value) : plantName(design.plant), 160)}</h1>
<p class="of">${named(plantName(design.plant))}</p>
</div>
<dl>${lines.map(([term, value]) => html`<div><dt>${term}</dt><dd>${value}</dd></div>`)}</dl>
</header>
`;
}

const recordedWords: Readonly<Record<string, string>> = { date: 'recorded on', by: 'recorded by' };

function verdictWords({ compared, recordings }: Acceptance, issue: AcceptanceIssue): Html {
  const { points } = compared;
  const count = (verdict: string) => points.filter((each) => each.verdict === verdict).length;
  const unread = recordings.filter(({ refused }) => refused !== undefined).length;
  return html`<p class="verdict">${sign('fails')} at ${count('fails')}, ${sign('cannot tell')} at ${count('cannot tell')}, ${sign('meets')} at ${count('meets')} of ${points.length} recorded points.</p>
<p>Against the chains as designed, by the checks that these records can answer. A point fails where one check fails; it meets where at least one check meets, none fails and none is left open. Nothing here speaks of what was not recorded.${issue.units === 'us' ? ' Values are shown in US units; the pictures keep metric ones.' : undefined}${unread === 0 ? undefined : ` ${unread} of the recordings could not be read; see Records.`}</p>`;
}

const signatures = html`<p>To be signed after reading 'What could not be proven'.</p>
${table({
  columns: ['', 'Name', 'Date', 'Signature'].map((head, at) => ({
    head: at === 0 ? html`<span class="unseen">Part</span>` : head,
    cell: (who: string) => (at === 0 ? who : html`<span class="blank">\u00a0</span>`),
  })),
  rows: ['Prepared', 'Checked', 'Approved'],
})}`;

const caution = html`<div class="caution"><p>Work on rotating machines, on stored energy, in hazardous areas and on protection trips follows the codes of the place and the practice of those licensed for it. This file compares recordings with a calculation; it replaces no permit, no certificate, no inspection and no signature. A machine is not fit to run because its measuring chains are.</p></div>`;

function dataBody({ dataHash }: AcceptanceIssue): Html {
  return html`<p>Everything the sections above show stands in this file once more for programs, as one line of JSON (RFC 8259, in UTF-8): the element <code>script</code> with the id <code>acceptance-data</code> at its end. It runs nothing. The SHA-256 of that line, from its first brace to its last, without the line end, is:</p>
<p class="hash">${dataHash}</p>
<p>To compute it again, take that line out of the file with any editor and hash it, or on a machine with the usual tools:</p>
<pre tabindex="0" aria-label="Command that computes the hash again">sed -n '/^&lt;script.*acceptance-data/{n;p;}' FILE.html | tr -d '\\n' | sha256sum</pre>
<p>The hash tells whether the data were changed. It does not tell who made them: for that, sign this file as a whole, or keep its own SHA-256 elsewhere.</p>`;
}

/** Data no browser runs; the line was made so that no sign in it can end the element. */
function dataElement({ data }: AcceptanceIssue): Html {
  if (/[<>&\n\r]/.test(data)) throw new Error('the data of an acceptance file is one line without markup');
  return asMarkup(`<script type="application/json" id="acceptance-data">\n${data}\n</script>\n`);
}
