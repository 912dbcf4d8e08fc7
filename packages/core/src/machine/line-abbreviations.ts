import { type Answer, answer, nearest, unanswered } from '../quantity/index.ts';
import type { FrequencyRow, FrequencyTable } from './frequency-table.ts';

/** The letters an analyst writes for a line, and what a line of that sort is called at its element. */
export interface LineAbbreviation {
  readonly letters: string;
  readonly inFull: string;
  /** Names a line may have at its element. */
  readonly lines: readonly string[];
}

/** Letters of the trade. Common practice, no source. One line here makes a further one understood in every target. */
export const lineAbbreviations: readonly LineAbbreviation[] = [
  { letters: 'BPFO', inFull: 'ball-pass frequency of the outer ring', lines: ['outer-ring'] },
  { letters: 'BPFI', inFull: 'ball-pass frequency of the inner ring', lines: ['inner-ring'] },
  { letters: 'BSF', inFull: 'ball spin frequency', lines: ['element-spin'] },
  { letters: 'FTF', inFull: 'fundamental train frequency', lines: ['cage'] },
  { letters: 'GMF', inFull: 'gear mesh frequency', lines: ['mesh'] },
  { letters: 'VPF', inFull: 'vane-pass frequency', lines: ['vane-pass', 'guide-vane-pass'] },
  { letters: 'BPF', inFull: 'blade-pass frequency', lines: ['blade-pass', 'vane-pass'] },
];

/** The letters a name ends in, with the element before them where one is named: `pump-drive-end/BPFO`, `BPFO`. */
function abbreviated(name: string) {
  const slash = name.lastIndexOf('/');
  const letters = name.slice(slash + 1).toUpperCase();
  const found = lineAbbreviations.find((each) => each.letters === letters);
  return found === undefined ? undefined : { ...found, element: slash < 0 ? undefined : name.slice(0, slash) };
}

/**
 * The row a target names, by its whole name or by letters of the trade. Letters that fit several lines of the machine
 * are not decided here: the answer is unknown, and the lines they fit are named.
 */
export function lineNamed({ of, rows }: FrequencyTable, name: string): Answer<FrequencyRow> {
  const row = rows.find((each) => each.line.name === name);
  if (row !== undefined) return answer(row);
  const letters = abbreviated(name);
  if (letters === undefined) {
    const near = nearest(
      name,
      rows.map((each) => each.line.name),
    );
    return unanswered([{ of, what: `line '${name}'${near === undefined ? '' : ` (is it '${near}'?)`}` }]);
  }
  const fitting = rows.filter(({ line }) => letters.lines.some((each) => line.name.endsWith(`/${each}`)));
  const there = fitting.filter(({ line }) => letters.element === undefined || line.element === letters.element);
  if (there.length === 1) return answer(there[0]!);
  return unanswered([{ of, what: `line '${name}' (${letters.inFull}; ${whichOf(there, fitting)})` }]);
}

function whichOf(there: readonly FrequencyRow[], fitting: readonly FrequencyRow[]): string {
  if (there.length > 0) return `is it ${oneOf(there)}?`;
  if (fitting.length > 0) return `no such line at that element; is it ${oneOf(fitting)}?`;
  return 'the machine as stated has no such line';
}

function oneOf(rows: readonly FrequencyRow[]): string {
  return rows.map(({ line }) => `'${line.name}'`).join(' or ');
}
