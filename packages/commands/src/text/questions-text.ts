import type { Question } from '@soundpost/core';
import { blank, heading, type Line, paragraph } from '../layout/line.ts';
import type { Manner } from '../manner.ts';
import { counted } from './values-text.ts';

/** What to ask, the answer that would change most first; nothing where nothing is open. */
export function questionLines(asked: readonly Question[], { width }: Manner): readonly Line[] {
  if (asked.length === 0) return [];
  return [
    blank,
    ...heading('What to ask, the answer that would change most first', width),
    ...asked.flatMap((each) => paragraph(`  ? ${questionText(each)}`, width, '  ')),
  ];
}

function questionText({ of, what, ask, between, points, judgements, turns }: Question): string {
  const bounds = between === undefined ? '' : `, believed between ${between.low} and ${between.high}`;
  const who = ask === undefined ? '' : `; ask ${ask}`;
  const waiting =
    judgements === 0 ? '' : `; ${counted(judgements, 'verdict')} ${judgements === 1 ? 'waits' : 'wait'} for it`;
  const weight = {
    verdict: '; the answer can turn the verdict',
    'not bounded': '',
    nothing: '; within these bounds it turns nothing',
  } as const;
  return `${what} of ${of}${bounds}${who}${waiting}${weight[turns]} (${points.join(', ')})`;
}
