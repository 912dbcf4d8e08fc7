import { decibels, type Judgement, type Showing, showMeasure } from '@soundpost/core';
import type { JudgementView } from './views.ts';

export function judgementView(judgement: Judgement, showing: Showing): JudgementView {
  const { rule, target, what, found, limit, outcome, margin } = judgement;
  return {
    rule,
    target,
    what: showMeasure(what, showing),
    found: showMeasure(found, showing),
    limit: showMeasure(limit, showing),
    outcome,
    margin: margin === undefined ? undefined : showMeasure(decibels(margin), showing),
  };
}
