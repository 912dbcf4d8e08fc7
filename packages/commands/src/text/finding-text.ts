import { type Finding, showClause, showMeasure } from '@soundpost/core';
import { bullet, grave, type Line, labelled, paragraph } from '../layout/line.ts';
import { weightMark, weightWords } from '../layout/mark.ts';
import type { Manner } from '../manner.ts';
import { capital, sentence } from './values-text.ts';

/** A finding: weight by sign and word, place, what was found against which limit, why it matters, what mends it. */
export function findingLines(finding: Finding, { showing, width }: Manner): readonly Line[] {
  const head = `${weightMark[finding.weight]} ${capital(weightWords[finding.weight])}: ${finding.at}`;
  const found = showMeasure(finding.found, showing);
  const against = showMeasure(finding.limit, showing);
  // A finding made from a judgement names its limit already.
  const limit = against === '' || found.includes(`(limit ${against})`) ? '' : ` against ${against}`;
  const sources = finding.sources.map(showClause).join('; ');
  return [
    ...(finding.weight === 'blocks-issue' ? grave(head, width) : paragraph(head, width, '  ')),
    ...paragraph(`  ${sentence(capital(found) + limit)} ${showMeasure(finding.because, showing)}`, width),
    ...(finding.asks === undefined ? [] : labelled('Question', showMeasure(finding.asks, showing), width, '  ', 12)),
    ...(finding.remedy.length === 0
      ? []
      : labelled(
          'To mend it',
          `${capital(finding.remedy.map((each) => showMeasure(each, showing)).join('; or '))}.`,
          width,
          '  ',
          12,
        )),
    ...labelled('Rule', finding.rule, width, '  ', 12),
    ...(sources === '' ? [] : labelled('Source', sources, width, '  ', 12)),
  ];
}

export function findingsLines(findings: readonly Finding[], manner: Manner): readonly Line[] {
  return findings.flatMap((each, index) => [...(index === 0 ? [] : [{ text: '' }]), ...findingLines(each, manner)]);
}

export function noFindings(what: string, { width }: Manner): readonly Line[] {
  return bullet(what, width, '', '✓');
}
