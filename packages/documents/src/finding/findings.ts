import { type Finding, showClause, showMeasure, type Weight } from '@soundpost/core';
import { type Html, html, joined, named } from '../typesetting/html.ts';
import type { Setting } from '../typesetting/setting.ts';
import { weightSign } from '../typesetting/verdict-shape.ts';

/** What each weight does to the design, said once above the list. */
const meaning: Readonly<Record<Weight, string>> = {
  'blocks-issue': 'stops the design from being issued',
  question: 'waits for an answer',
  warns: 'is printed with the design',
  notes: 'explains',
};

/** Findings as they come, gravest first: what was found, against what, why it matters, what to do. */
export function findingList(findings: readonly Finding[], setting: Setting, none: string): Html {
  if (findings.length === 0) return html`<p>${none}</p>`;
  const weights = [...new Set(findings.map((each) => each.weight))];
  const key = weights.map((weight) => html`${weightSign(weight)} ${meaning[weight]}`);
  return html`<p class="note">Gravest first. ${joined(key, '; ')}.</p>
${findings.map((each) => findingBlock(each, setting))}`;
}

function findingBlock(each: Finding, { showing }: Setting): Html {
  const limit = showMeasure(each.limit, showing);
  const lines: readonly (readonly [string, Html | string | undefined])[] = [
    ['Found', showMeasure(each.found, showing)],
    ['Limit', limit === '' ? undefined : limit],
    ['Why it matters', showMeasure(each.because, showing)],
    ['What to do', remedies(each.remedy.map((one) => showMeasure(one, showing)))],
    ['Question', each.asks === undefined ? undefined : showMeasure(each.asks, showing)],
    ['Sources', each.sources.length === 0 ? undefined : each.sources.map(showClause).join('; ')],
  ];
  const shown = lines.map(([term, text]) =>
    text === undefined ? undefined : html`<dt>${term}</dt><dd>${text}</dd>\n`,
  );
  return html`<article class="finding">
<div>${weightSign(each.weight)}</div>
<h4>${named(each.at)} <span class="rule-id">${each.rule}</span></h4>
<dl>
${shown}</dl></article>
`;
}

function remedies(remedy: readonly string[]): Html | undefined {
  if (remedy.length === 0) return undefined;
  if (remedy.length === 1) return html`${remedy[0]}`;
  return html`<ul>${remedy.map((each) => html`<li>${each}</li>`)}</ul>`;
}
