import {
  type CheckResult,
  type CheckVerdict,
  type Comparison,
  type Said,
  showMeasure,
  unprovenTogether,
  waysToRecord,
} from '@soundpost/core';
import { blank, bullet, grave, heading, type Line, labelled, paragraph } from '../layout/line.ts';
import type { Manner } from '../manner.ts';
import { counted } from './values-text.ts';

const marks: Readonly<Record<CheckVerdict, string>> = { meets: '✓', fails: '✗', 'cannot tell': '?' };

/** What every record says of every point, gravest first within a point. */
export function comparisonLines({ results, points, strangers }: Comparison, manner: Manner): readonly Line[] {
  return [
    ...points.flatMap(({ at, verdict, counts }) => [
      blank,
      ...heading(`${at}: ${verdict}`, manner.width),
      ...paragraph(
        `  ${counts.meets} met, ${counts.fails} failed, ${counts['cannot tell']} cannot be told from these records`,
        manner.width,
        '  ',
      ),
      ...gravestFirst(results.filter((each) => each.at === at)).flatMap((each) => resultLines(each, manner)),
    ]),
    ...strangers.flatMap((at) => [
      blank,
      ...grave(`? ${at} is no measuring point of this plant: its records were held against nothing.`, manner.width),
    ]),
  ];
}

const order: readonly CheckVerdict[] = ['fails', 'cannot tell', 'meets'];

function gravestFirst(results: readonly CheckResult[]): readonly CheckResult[] {
  return [...results].sort((a, b) => order.indexOf(a.verdict) - order.indexOf(b.verdict));
}

function resultLines(result: CheckResult, { width, showing }: Manner): readonly Line[] {
  const show = (each: Said) => showMeasure(each, showing);
  const row = (label: string, text: string) => labelled(label, text, width, '    ', 12);
  const title = `${marks[result.verdict]} ${result.title}${result.of === undefined ? '' : `, ${result.of}`}: ${result.verdict} (${result.record})`;
  return [
    ...(result.verdict === 'fails' ? grave(`  ${title}`, width, '    ') : paragraph(`  ${title}`, width, '    ')),
    ...row('expected', show(result.expected)),
    ...row('found', found(result, show)),
    ...(result.verdict === 'meets' ? [] : row('tolerance', show(result.tolerance))),
    ...(result.verdict === 'meets' ? [] : row('because', show(result.because))),
    ...result.causes.flatMap(({ cause, evidence, next }) => [
      ...bullet(`perhaps: ${show(cause)}`, width, '      '),
      ...paragraph(`        evidence: ${show(evidence)}`, width, '          '),
      ...paragraph(`        next test: ${show(next)}`, width, '          '),
    ]),
    ...result.needs.flatMap((each) => bullet(`needs: ${show(each)}`, width, '      ')),
  ];
}

function found({ found: what, interval }: CheckResult, show: (each: Said) => string): string {
  return interval === undefined ? show(what) : `${show(what)} (95 %: ${show(interval)})`;
}

/** What no record of the session could prove, by point and by the record that would, and how each record is made. */
export function notProvenLines({ unproven }: Comparison, manner: Manner): readonly Line[] {
  if (unproven.length === 0) return [];
  const { width } = manner;
  const groups = unprovenTogether(unproven);
  const points = [...new Set(groups.map(({ at }) => at))];
  return [
    blank,
    ...heading(`What could not be proven: ${counted(unproven.length, 'check')}`, width),
    ...points.flatMap((at) => [
      ...paragraph(`  ${at}`, width, '  '),
      ...groups
        .filter((each) => each.at === at)
        .flatMap(({ needs, checks }) =>
          bullet(`${needs.length === 0 ? 'no record can' : needs.join(' or ')}: ${checks.join(', ')}`, width, '    '),
        ),
    ]),
    blank,
    ...heading('How these records are made', width),
    ...waysToRecord(unproven).flatMap(({ name, how }) => bullet(`${name}: ${how}`, width)),
    ...paragraph('  The user guide says more, with cautions: docs/user-guide/accepting.md.', width, '  '),
  ];
}
