import {
  type Appraisal,
  type Cell,
  cells,
  type Judgement,
  outcomes,
  type ShortlistRow,
  type Showing,
} from '@soundpost/core';
import { blank, type Line, paragraph, plainLines } from '../layout/line.ts';
import { outcomeMark } from '../layout/mark.ts';
import { type Column, table } from '../layout/table.ts';
import type { Manner } from '../manner.ts';
import { legend, marginText, shortRule } from './judgement-text.ts';

/** So many columns of verdicts fit beside the name of a candidate; more of them go into further tables. */
const abreast = 4;

/** Every candidate against every target: a sign, the margin, and the rule that decides. */
export function matrixLines(rows: readonly ShortlistRow[], manner: Manner): readonly Line[] {
  const first = rows[0];
  if (first === undefined) return [];
  const heads = [...cells(first.appraisal).map((cell) => cell.target), 'chain as a whole'];
  const tables = Math.ceil(heads.length / abreast);
  const each = Math.ceil(heads.length / tables);
  const parts = Array.from({ length: tables }, (_, index) => heads.slice(index * each, (index + 1) * each));
  return [
    ...parts.flatMap((part) => [...plainLines(matrixPart(rows, heads, part, manner)), blank]),
    ...paragraph(legend, manner.width),
  ];
}

function matrixPart(
  rows: readonly ShortlistRow[],
  heads: readonly string[],
  part: readonly string[],
  { showing, width }: Manner,
): readonly string[] {
  const columns: Column[] = [{ head: '' }, { head: 'candidate' }, ...part.map((head) => ({ head }))];
  const lines = rows.map((row, index) => {
    const all = [...cells(row.appraisal), wholeChain(row.appraisal)].map((cell) => cellText(cell, showing));
    return [
      String(index + 1),
      `${row.transducer.name} on ${row.mount.name}`,
      ...part.map((head) => all[heads.indexOf(head)]!),
    ];
  });
  return table(columns, lines, width);
}

/** What was judged of the chain and of no target in particular. */
function wholeChain(appraisal: Appraisal): Cell {
  const judgements = appraisal.judgements.filter((each) => each.target === undefined);
  const decides = worst(judgements);
  return { target: '', outcome: decides?.outcome ?? 'meets', decides, judgements };
}

function worst(judgements: readonly Judgement[]): Judgement | undefined {
  return [...judgements].sort(
    (a, b) => outcomes.indexOf(a.outcome) - outcomes.indexOf(b.outcome) || (a.margin ?? 1000) - (b.margin ?? 1000),
  )[0];
}

function cellText({ outcome, decides }: Cell, showing: Showing): string {
  const mark = outcomeMark[outcome];
  if (decides === undefined) return '– not judged';
  const margin = decides.margin === undefined ? '' : ` ${marginText(decides.margin, showing)}`;
  return `${mark}${margin}\n${shortRule(decides.rule)}`;
}
