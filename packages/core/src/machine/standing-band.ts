import { type Answer, answer, fromAll, thenAnswer, unanswered } from '../quantity/index.ts';
import type { Clause } from '../source/source.ts';
import { type ElementLine, noSlip } from './element.ts';
import { constant, measuredTimes } from './form.ts';

/** A resonance that stays where it is while the machine changes its speed. */
export interface Resonance {
  readonly low: number;
  readonly high: number;
  /** Quality of its peak, where known: 1/(2ζ). */
  readonly quality?: number;
}

/** The line of a resonance: its middle, with the band in which it is believed and, where known, half its power width. */
export function resonanceLine(
  of: string,
  resonance: Answer<Resonance>,
  words: { readonly name: string; readonly meaning: string; readonly sources: readonly Clause[] },
): ElementLine {
  const found = thenAnswer(resonance, (known) =>
    known.low > 0 ? answer(known) : unanswered([{ of, what: 'a frequency above zero' }]),
  );
  return {
    ...words,
    form: fromAll({ found }, ({ found: known }) => [measuredTimes(middle(known), constant)]),
    slip: found.known ? bandOf(found.value) : noSlip,
  };
}

function middle({ low, high }: Resonance): number {
  return (low + high) / 2;
}

function bandOf(resonance: Resonance) {
  const half = resonance.quality === undefined ? 0 : 1 / (2 * resonance.quality);
  const centre = middle(resonance);
  return {
    low: (resonance.low * (1 - Math.min(half, 1))) / centre - 1,
    high: (resonance.high * (1 + half)) / centre - 1,
  };
}
