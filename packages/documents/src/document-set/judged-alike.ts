import { type Judgement, type Measure, type Showing, showMeasure } from '@soundpost/core';
import { grouped } from './grouped.ts';

/** A judgement with the place it was made at. */
export interface PlacedJudgement {
  readonly place: string;
  readonly judgement: Judgement;
}

/** One rule held against one limit with one outcome at several places. */
export interface JudgedAlike {
  readonly places: readonly string[];
  /** The judgement with the least margin; the first where none has a margin. */
  readonly worst: PlacedJudgement;
  /** From the lowest found to the highest; one text where all found the same. */
  readonly found: string;
  /** Whether the places found different values of which one is nearest to the limit. */
  readonly differs: boolean;
}

/**
 * Judgements that ask the same, allow the same and end the same, together: what was found is then told as a range with
 * its worst. What is found in words is together only where the words are the same, so that none is lost.
 */
export function judgedAlike(judgements: readonly PlacedJudgement[], showing: Showing): readonly JudgedAlike[] {
  const groups = grouped(judgements, ({ judgement }) => keyOf(judgement, showing));
  return groups.map((alike): JudgedAlike => {
    const worst = alike.reduce((least, each) => (marginOf(each) < marginOf(least) ? each : least));
    const sorted = alike.toSorted((a, b) => (sizeOf(a)?.value ?? 0) - (sizeOf(b)?.value ?? 0));
    const [low, high] = [sorted[0]!, sorted.at(-1)!].map(({ judgement }) => showMeasure(judgement.found, showing));
    return {
      places: [...new Set(alike.map(({ place }) => place))],
      worst,
      found: low === high ? low! : `${low} to ${high}`,
      differs: low !== high && worst.judgement.margin !== undefined,
    };
  });
}

function keyOf({ rule, target, what, limit, outcome, needs, found }: Judgement, showing: Showing): string {
  const asked = [target ?? showMeasure(what, showing), showMeasure(limit, showing)];
  const ended = needs === undefined ? '' : showMeasure(needs, showing);
  return JSON.stringify([rule, ...asked, outcome, ended, numberIn(found)?.of ?? showMeasure(found, showing)]);
}

function marginOf({ judgement: { margin } }: PlacedJudgement): number {
  return margin ?? Number.POSITIVE_INFINITY;
}

function sizeOf({ judgement }: PlacedJudgement): NumberOf | undefined {
  return numberIn(judgement.found);
}

interface NumberOf {
  /** What it is a number of: only such are put in one row. */
  readonly of: string;
  readonly value: number;
}

function numberIn(found: Measure): NumberOf | undefined {
  switch (found.is) {
    case 'quantity':
      return { of: `quantity ${found.quantity}`, value: found.value };
    case 'level':
      return { of: `level ${found.level.quantity} ${found.level.detector}`, value: found.level.value };
    case 'change':
      return { of: 'change', value: found.fraction };
    case 'decibels':
    case 'number':
      return { of: found.is, value: found.value };
    default:
      return undefined;
  }
}
