import { figure } from '../drawing/figure.ts';
import { type Html, html, named } from '../typesetting/html.ts';
import { pageInPieces } from '../typesetting/page.ts';
import { contents, type Section, sectionsInPieces } from '../typesetting/section.ts';
import { type Column, table } from '../typesetting/table.ts';
import { cellText } from './cells.ts';
import type { Block, Cell, DocumentRecord, IssueFacts, SetTable } from './record.ts';
import { headText } from './set-table.ts';

/** The documents of one issue as one file that any browser opens: nothing is loaded, nothing runs. */
export function setPage(records: readonly DocumentRecord[], issue: IssueFacts): string {
  return [...setPageInPieces(records, issue)].join('');
}

/** The same piece by piece: of the documents no more than a sheet is held at a time. */
export function setPageInPieces(records: readonly DocumentRecord[], issue: IssueFacts): Iterable<string> {
  const title = records.length === 1 ? records[0]!.title : 'Documents';
  const sections = records.map(
    (record): Section => ({
      title: record.title,
      newSheet: true,
      body: '',
      within: record.sheets.map(
        (sheet, index): Section => ({
          title: named(sheet.title, 160),
          newSheet: index > 0,
          get body() {
            return sheet.blocks.map((block, at) => setBlock(block, `${record.kind}-${index}-${at}`));
          },
        }),
      ),
    }),
  );
  return pageInPieces({
    title: `${title}: ${issue.plant}`,
    foot: `${title}, revision ${issue.revision}, content ${issue.contentHash.slice(0, 16)}`,
    body: bodyPieces(
      html`${titleBlock(title, issue)}${contents(sections)}
`,
      sections,
    ),
  });
}

function* bodyPieces(head: Html, sections: readonly Section[]): Generator<Html> {
  yield head;
  yield* sectionsInPieces(sections);
}

function titleBlock(title: string, issue: IssueFacts): Html {
  const lines = [
    ['owner', issue.owner],
    ['project', issue.project],
    ['revision', issue.revision],
    ['date', issue.date],
    ['prepared by', issue.preparedBy],
    ['content hash', issue.contentHash],
  ] as const;
  const preliminary =
    issue.preliminary === undefined
      ? undefined
      : html`<div class="caution"><p>PRELIMINARY, not for construction: ${issue.preliminary}</p></div>`;
  return html`<header class="title-block"><div>
<p class="kind">${title}</p>
<h1>${named(issue.plant, 160)}</h1>
</div>
<dl>${lines.map(([term, value]) => html`<div><dt>${term}</dt><dd>${named(value, 160)}</dd></div>`)}</dl>
</header>
${preliminary}`;
}

function setBlock(block: Block, id: string): Html {
  switch (block.is) {
    case 'heading':
      return html`<h4>${block.text}</h4>`;
    case 'paragraph':
      return html`<p>${block.text}</p>`;
    case 'note':
      return html`<p class="note">${block.text}</p>`;
    case 'caution':
      return html`<div class="caution"><p>${block.text}</p></div>`;
    case 'list':
      return html`<ul>${block.entries.map((each) => html`<li>${each}</li>`)}</ul>`;
    case 'facts':
      return html`<dl class="facts">${block.facts.map(({ term, value }) => html`<dt>${term}</dt><dd>${value}</dd>`)}</dl>`;
    case 'derivation': {
      const { formula, substituted, notes } = block.derivation;
      return html`<p><span class="quiet">${formula}</span>${substituted === undefined ? undefined : html`<br>${substituted}`}</p>
${notes.length === 0 ? undefined : html`<p class="note">${notes.join('; ')}</p>`}`;
    }
    case 'drawing':
      return figure(id, () => block.drawing, block.caption);
    case 'table':
      return tableOnPage(block);
    case 'signatures':
      return table({
        columns: ['', 'Name', 'Date', 'Signature'].map((head, at) => ({
          head,
          cell: (who: string) => (at === 0 ? who : '\u00a0'),
        })),
        rows: block.signed,
      });
  }
}

function tableOnPage({ caption, columns, rows, empty }: SetTable): Html {
  return table({
    caption,
    columns: columns.map(
      (column, at): Column<readonly Cell[]> => ({
        head: headText(column),
        kind: column.kind === 'number' || column.kind === 'measure' ? column.kind : 'text',
        cell: (row) => cellText(row[at]!),
      }),
    ),
    rows,
    empty,
  });
}
