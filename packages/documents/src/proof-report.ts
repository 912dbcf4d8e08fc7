import type { Design } from '@soundpost/core';
import { machineSection } from './design/machine-section.ts';
import { notProven } from './design/not-proven.ts';
import { partsSection } from './design/parts-section.ts';
import { footOf, type Issue, plantName, titleBlock } from './design/title-block.ts';
import { verdict } from './design/verdict.ts';
import { type DocumentOptions, documentKind } from './document-kind.ts';
import { findingList } from './finding/findings.ts';
import { sourceTable } from './source/sources-cited.ts';
import { type Html, html } from './typesetting/html.ts';
import { page } from './typesetting/page.ts';
import { contents, type Section, setSections } from './typesetting/section.ts';
import type { Setting } from './typesetting/setting.ts';
import { groundLoopSection } from './wiring/ground-loop-section.ts';

const title = 'Proof report';

/**
 * The whole design on one self-contained page: the verdict and what it is against, the findings, every machine and
 * point with its targets, chain, judgements and budgets, and what could not be proven. Same design, same bytes.
 */
export function proofReport(design: Design, options: DocumentOptions = {}): string {
  const setting: Setting = { showing: options.units === undefined ? {} : { units: options.units } };
  const issue: Issue = options;
  const sections: readonly Section[] = [
    { title: 'Verdict', body: html`${verdict(design)}${inOtherUnits(options)}` },
    {
      title: 'Findings',
      body: findingList(
        design.findings,
        setting,
        'No rule of the machine, the chain or the alarms found anything to say against the stated targets.',
      ),
    },
    ...design.machines.map((machine, index) => machineSection(machine, design.plant, `m${index + 1}`, setting)),
    { title: 'Ground loops', body: groundLoopSection(design, setting) },
    { title: 'What could not be proven', body: '', newSheet: true, within: notProven(design, setting) },
    { title: 'Data the proof rests on', body: partsSection(design, setting), newSheet: true },
    { title: 'Sources', body: sourceTable(design), newSheet: true },
    { title: 'Caution', body: caution },
  ];
  return page({
    title: `${title}: ${plantName(design.plant)}`,
    foot: footOf(design, title, issue),
    body: html`${titleBlock(design, title, issue, setting)}${contents(sections)}
${setSections(sections)}`,
  });
}

function inOtherUnits({ units }: DocumentOptions): Html | undefined {
  if (units !== 'us') return undefined;
  return html`<p class="note">Values are shown in US units. Sentences in which a rule gives its own reasons keep the metric units the rule wrote them in.</p>`;
}

const caution = html`<div class="caution"><p>Work on rotating machines, in hazardous areas and on protection trips follows the codes of the place and the practice of those licensed for it. This report is a calculation about measuring chains; it replaces no permit, no certificate, no inspection and no signature.</p></div>`;

export const proofReportKind = documentKind({
  kind: 'proof-report',
  title,
  readers: 'whoever reviews, signs or audits the design: the reason beside every number',
  extension: 'html',
  make: proofReport,
});
