import type { Showing } from '../quantity/index.ts';
import type { Clause } from '../source/source.ts';
import { type Said, showMeasure } from './measure.ts';

/**
 * What a finding does to the design: `blocks-issue` stops it, `question` waits for somebody's answer, `warns` is
 * printed with it, `notes` explains.
 */
export const weights = ['blocks-issue', 'question', 'warns', 'notes'] as const;
export type Weight = (typeof weights)[number];

/** Something wrong, doubtful or worth knowing about a design: data, never an exception. */
export interface Finding {
  /** The rule that speaks: `chain/overload`. */
  readonly rule: string;
  readonly weight: Weight;
  /** The place it speaks of: `P-301/pump/drive-end/horizontal`. */
  readonly at: string;
  /** What was found and what the limit is, in the units of the trade; both from the values, never typed twice. */
  readonly found: Said;
  readonly limit: Said;
  /** Why it matters. */
  readonly because: Said;
  /** What would mend it, most effective first. */
  readonly remedy: readonly Said[];
  readonly sources: readonly Clause[];
  /** For a question: what is not known, and who could answer. */
  readonly asks?: Said;
}

export function finding(definition: Finding): Finding {
  return definition;
}

export function blocks(findings: readonly Finding[]): boolean {
  return findings.some((each) => each.weight === 'blocks-issue');
}

/** The finding as one paragraph: what is wrong, why it matters, what to do. */
export function wording(each: Finding, showing: Showing = {}): string {
  const limit = each.limit === '' ? '' : `; limit: ${showMeasure(each.limit, showing)}`;
  const remedy =
    each.remedy.length === 0
      ? ''
      : ` To mend it: ${each.remedy.map((one) => showMeasure(one, showing)).join('; or ')}.`;
  const asks = each.asks === undefined ? '' : ` Question: ${showMeasure(each.asks, showing)}`;
  return `${each.at}: ${showMeasure(each.found, showing)}${limit}. ${showMeasure(each.because, showing)}${remedy}${asks}`;
}

const byWeight: Readonly<Record<Weight, number>> = { 'blocks-issue': 0, question: 1, warns: 2, notes: 3 };

/** Gravest first; within a weight in the order of the places. */
export function inOrderOfWeight(findings: readonly Finding[]): readonly Finding[] {
  return [...findings].sort(
    (a, b) => byWeight[a.weight] - byWeight[b.weight] || (a.at < b.at ? -1 : a.at > b.at ? 1 : 0),
  );
}
