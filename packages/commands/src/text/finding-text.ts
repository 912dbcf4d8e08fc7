import { type Finding, type Showing, showClause, showMeasure } from '@soundpost/core';
import { blank, bullet, grave, type Line, labelled, paragraph } from '../layout/line.ts';
import { weightMark, weightWords } from '../layout/mark.ts';
import type { Manner } from '../manner.ts';
import { capital, counted, sentence } from './values-text.ts';

/** A finding: weight by sign and word, place, what was found against which limit, why it matters, what mends it. */
export function findingLines(finding: Finding, manner: Manner): readonly Line[] {
  return alikeLines([finding], manner);
}

/** Findings in their order; those that differ in place and number alone stand together, their reason said once. */
export function findingsLines(findings: readonly Finding[], manner: Manner): readonly Line[] {
  const alike = new Map<string, Finding[]>();
  for (const each of findings) {
    const { rule, weight, because, remedy, asks, sources } = each;
    const key = JSON.stringify([rule, weight, because, remedy, asks, sources.map(showClause)]);
    alike.set(key, [...(alike.get(key) ?? []), each]);
  }
  return [...alike.values()].flatMap((each, index) => [...(index === 0 ? [] : [blank]), ...alikeLines(each, manner)]);
}

function alikeLines(findings: readonly Finding[], { showing, width }: Manner): readonly Line[] {
  const { weight, at, because, asks, remedy, rule, sources } = findings[0]!;
  const onePlace = findings.every((each) => each.at === at);
  const head = `${weightMark[weight]} ${capital(weightWords[weight])}: ${onePlace ? at : counted(findings.length, 'place')}`;
  const reasons = showMeasure(because, showing);
  const cited = sources.map(showClause).join('; ');
  return [
    ...(weight === 'blocks-issue' ? grave(head, width) : paragraph(head, width, '  ')),
    ...(findings.length === 1
      ? paragraph(`  ${foundText(findings[0]!, showing)} ${reasons}`, width)
      : [
          ...findings.flatMap((each) => bullet(`${onePlace ? '' : `${each.at}: `}${foundText(each, showing)}`, width)),
          ...paragraph(`  ${reasons}`, width),
        ]),
    ...(asks === undefined ? [] : labelled('Question', showMeasure(asks, showing), width, '  ', 12)),
    ...(remedy.length === 0
      ? []
      : labelled(
          'To mend it',
          `${capital(remedy.map((each) => showMeasure(each, showing)).join('; or '))}.`,
          width,
          '  ',
          12,
        )),
    ...labelled('Rule', rule, width, '  ', 12),
    ...(cited === '' ? [] : labelled('Source', cited, width, '  ', 12)),
  ];
}

/** What was found against its limit; a finding made from a judgement names its limit already. */
function foundText(finding: Finding, showing: Showing): string {
  const found = showMeasure(finding.found, showing);
  const against = showMeasure(finding.limit, showing);
  const limit = against === '' || found.includes(`(limit ${against})`) ? '' : ` against ${against}`;
  return sentence(capital(found) + limit);
}

export function noFindings(what: string, { width }: Manner): readonly Line[] {
  return bullet(what, width, '', '✓');
}
