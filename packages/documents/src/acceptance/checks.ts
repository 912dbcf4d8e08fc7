import { type CheckResult, type CheckVerdict, type RivalCause, showMeasure } from '@soundpost/core';
import { type Html, html, joined, named, type Piece } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';
import { table } from '../typesetting/table.ts';
import { sign } from '../typesetting/verdict-shape.ts';

const gravity: readonly CheckVerdict[] = ['fails', 'cannot tell', 'meets'];

/** The checks of a point: those that fail or cannot tell in full, those that meet in one table. */
export function checkList(results: readonly CheckResult[], setting: Setting, none: string): Html {
  if (results.length === 0) return html`<p class="empty">${none}</p>`;
  const sorted = [...results].sort((a, b) => gravity.indexOf(a.verdict) - gravity.indexOf(b.verdict));
  const open = sorted.filter(({ verdict }) => verdict !== 'meets');
  const met = sorted.filter(({ verdict }) => verdict === 'meets');
  return html`${open.map((each) => openCheck(each, setting))}${met.length === 0 ? undefined : metTable(met, setting)}`;
}

function titleOf({ title, of }: CheckResult): string {
  return of === undefined ? title : `${title}, ${of}`;
}

function foundOf({ found, interval }: CheckResult, { showing }: Setting): string {
  const what = showMeasure(found, showing);
  return interval === undefined ? what : `${what} (95 %: ${showMeasure(interval, showing)})`;
}

function openCheck(each: CheckResult, setting: Setting): Html {
  const { showing } = setting;
  const lines: readonly (readonly [string, Piece])[] = [
    ['Expected', showMeasure(each.expected, showing)],
    ['Tolerance', showMeasure(each.tolerance, showing)],
    ['Found', foundOf(each, setting)],
    ['Because', showMeasure(each.because, showing)],
    ['Needed', each.needs.length === 0 ? undefined : each.needs.map((need) => showMeasure(need, showing)).join('; ')],
  ];
  const shown = lines.map(([term, text]) =>
    text === undefined || text === '—' ? undefined : html`<dt>${term}</dt><dd>${text}</dd>\n`,
  );
  return html`<article class="finding">
<div>${sign(each.verdict)}</div>
<h4>${titleOf(each)} <span class="rule-id">${named(each.record)}</span></h4>
<dl>
${shown}</dl></article>
${each.causes.length === 0 ? undefined : causeTable(each.causes, titleOf(each), setting)}`;
}

function causeTable(causes: readonly RivalCause[], of: string, { showing }: Setting): Html {
  const evidence = [...new Set(causes.map((each) => showMeasure(each.evidence, showing)))];
  const common = evidence.length === 1 ? `; evidence of all: ${evidence[0]}` : '';
  return table({
    caption: `${of}: what it may be, most likely first${common}`,
    columns: [
      { head: 'Cause', cell: ({ cause }: RivalCause) => showMeasure(cause, showing) },
      ...(common === '' ? [{ head: 'Evidence', cell: (each: RivalCause) => showMeasure(each.evidence, showing) }] : []),
      { head: 'Next test', cell: ({ next }: RivalCause) => showMeasure(next, showing) },
    ],
    rows: causes,
    folds: true,
  });
}

function metTable(results: readonly CheckResult[], setting: Setting): Html {
  const { showing } = setting;
  const rows = alikeTogether(results, setting);
  return table({
    caption: 'Met',
    columns: [
      { head: 'Check', cell: (each: Met) => html`${sign(each.verdict)} ${titleOf(each)}` },
      { head: 'Expected', cell: ({ expected }) => showMeasure(expected, showing) },
      { head: 'Tolerance', cell: ({ tolerance }) => showMeasure(tolerance, showing) },
      { head: 'Found', cell: (each) => foundOf(each, setting) },
      {
        head: 'Record',
        cell: ({ records }) =>
          joined(
            records.map((each) => named(each)),
            '; ',
          ),
      },
    ],
    rows,
    folds: true,
  });
}

/** A check that several records of a point answer alike. */
interface Met extends CheckResult {
  readonly records: readonly string[];
}

function alikeTogether(results: readonly CheckResult[], setting: Setting): readonly Met[] {
  const together = new Map<string, Met>();
  for (const each of results) {
    const shown = [each.expected, each.tolerance].map((one) => showMeasure(one, setting.showing));
    const key = [titleOf(each), ...shown, foundOf(each, setting)].join(' | ');
    together.set(key, { ...each, records: [...(together.get(key)?.records ?? []), each.record] });
  }
  return [...together.values()];
}
