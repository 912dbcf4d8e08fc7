import { type JudgedArea, reason } from '@soundpost/core';
import { bullet, type Line, labelled, paragraph } from '../layout/line.ts';
import type { Manner } from '../manner.ts';

const mark = { meets: '✓', warns: '!', 'cannot tell': '?', fails: '✗' } as const;

/** The loop of a point against the certificates of its area: what was compared, in the words of the record, and its caution. */
export function areaLines(area: JudgedArea, { width, showing }: Manner): readonly Line[] {
  return [
    ...labelled('Area', `${area.name}: ${area.wording}`, width),
    ...area.judgements.flatMap((each) => paragraph(`  ${mark[each.outcome]} ${reason(each, showing)}`, width, '    ')),
    ...area.conditions.flatMap((each) => bullet(`special condition of ${each.of}: ${each.words}`, width)),
    ...paragraph(`  ${area.caution}`, width, '  '),
  ];
}
