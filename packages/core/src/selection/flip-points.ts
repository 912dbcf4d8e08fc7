import type { Judgement } from '../chain/rules/rule.ts';
import type { Policy } from '../demand/policy.ts';
import { showMeasure } from '../finding/measure.ts';
import { type Appraisal, appraisal } from './appraisal.ts';
import { type Assumption, assumptions, type Subject } from './assumptions.ts';

/** A value at which the verdict on a chain turns: below or above what was stated, and what then decides. */
export interface FlipPoint {
  readonly of: string;
  readonly what: string;
  /** The value as stated, and the nearest value at which the verdict is another. */
  readonly stated: string;
  readonly flipsAt: string;
  /** How far away, in decades of the value; of a temperature, in units of 150 K. */
  readonly decades: number;
  readonly from: Verdict;
  readonly to: Verdict;
  /** The judgement that turns. */
  readonly decides: Judgement | undefined;
}

export type Verdict = 'accepted' | 'refused' | 'cannot tell';

export function verdictOf(appraised: Appraisal): Verdict {
  if (appraised.outcome === 'fails') return 'refused';
  return appraised.outcome === 'cannot tell' ? 'cannot tell' : 'accepted';
}

/** Two decades either way: beyond that a value is another part, not another guess. */
const reach = 2;
/** Steps of the walk either way. A verdict that turns and turns back within one step is stepped over. */
const steps = 16;
const finest = 1e-4;

/**
 * Every assumption at which the verdict on this chain turns, nearest first, each moved by itself: a walk outwards in
 * both directions, then bisection of the step in which the verdict turns, to 0.02 %.
 */
export function flipPoints(subject: Subject, policy: Policy): readonly FlipPoint[] {
  const judge = (changed: Subject) => appraisal(changed.point, changed.parts, policy);
  const from = verdictOf(judge(subject));
  const found = assumptions(subject).flatMap((assumption) =>
    ([-1, 1] as const).flatMap((direction) => {
      const decades = nearestFlip(assumption, direction, subject, from, judge);
      return decades === undefined ? [] : [flipPoint(assumption, decades, subject, from, judge)];
    }),
  );
  return found.sort((a, b) => Math.abs(a.decades) - Math.abs(b.decades));
}

type Judge = (subject: Subject) => Appraisal;

function nearestFlip(
  assumption: Assumption,
  direction: -1 | 1,
  subject: Subject,
  from: Verdict,
  judge: Judge,
): number | undefined {
  const turned = (decades: number) => verdictOf(judge(assumption.moved(subject, decades))) !== from;
  let inside = 0;
  for (let step = 1; step <= steps; step++) {
    // Fine near the stated value, coarse far away.
    const outside = direction * reach * (step / steps) ** 2;
    if (turned(outside)) return bisected(inside, outside, turned);
    inside = outside;
  }
  return undefined;
}

function bisected(inside: number, outside: number, turned: (decades: number) => boolean): number {
  let [same, other] = [inside, outside];
  while (Math.abs(other - same) > finest) {
    const middle = (same + other) / 2;
    if (turned(middle)) other = middle;
    else same = middle;
  }
  return other;
}

function flipPoint(assumption: Assumption, decades: number, subject: Subject, from: Verdict, judge: Judge): FlipPoint {
  const after = judge(assumption.moved(subject, decades));
  const before = judge(subject);
  const key = (each: Judgement) => `${each.rule} ${each.target ?? ''} ${showMeasure(each.what)}`;
  const stopping = (appraised: Appraisal) =>
    appraised.judgements.filter((each) => each.outcome === 'fails' || each.outcome === 'cannot tell');
  const newIn = (list: readonly Judgement[], beside: readonly Judgement[]) =>
    list.find((each) => !beside.some((other) => key(other) === key(each) && other.outcome === each.outcome));
  return {
    of: assumption.of,
    what: assumption.what,
    stated: assumption.shown,
    flipsAt: assumption.shownAt(decades),
    decades,
    from,
    to: verdictOf(after),
    decides: newIn(stopping(after), stopping(before)) ?? newIn(stopping(before), stopping(after)),
  };
}
