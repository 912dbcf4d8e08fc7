import type { FlipPoint } from '@soundpost/core';
import { judgementJson } from '../json/judgement-json.ts';
import { heading, type Line, paragraph, plainLines } from '../layout/line.ts';
import { table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';
import { shortRule } from './judgement-text.ts';

/** At which value of each assumption the verdict would be another, nearest first. */
export function flipPointLines(found: readonly FlipPoint[], { width }: Manner): readonly Line[] {
  if (found.length === 0) {
    return paragraph('No single assumption turns this verdict within a factor of a hundred either way.', width);
  }
  const rows = found.map((each) => [`${each.what} of ${each.of}`, each.stated, each.flipsAt, turnText(each)]);
  return [
    ...heading('Where the verdict would turn, each assumption moved by itself, nearest first', width),
    ...plainLines(
      table([{ head: 'assumption' }, { head: 'stated' }, { head: 'turns at' }, { head: 'then' }], rows, width, '  '),
    ),
  ];
}

function turnText({ to, decides }: FlipPoint): string {
  if (decides === undefined) return to;
  const target = decides.target === undefined ? '' : `${decides.target}, `;
  return `${to}: ${target}${shortRule(decides.rule)}`;
}

export function flipPointJson(each: FlipPoint): unknown {
  const { of, what, stated, flipsAt, decades, from, to, decides } = each;
  return {
    of,
    what,
    stated,
    flipsAt,
    decades,
    from,
    to,
    ...(decides === undefined ? {} : { decides: judgementJson(decides) }),
  };
}
