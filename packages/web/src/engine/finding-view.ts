import { type Finding, type Showing, showClause, showMeasure } from '@soundpost/core';
import type { FindingView } from './views.ts';

/** A finding in the reader's units, with the place it speaks of taken apart. */
export function findingView(each: Finding, index: number, showing: Showing, points: ReadonlySet<string>): FindingView {
  const [machine] = each.at.split('/');
  const point = [...prefixes(each.at)].find((of) => points.has(of));
  return {
    key: `${index}/${each.rule}/${each.at}`,
    rule: each.rule,
    weight: each.weight,
    at: each.at,
    machine,
    point,
    found: showMeasure(each.found, showing),
    limit: showMeasure(each.limit, showing),
    because: showMeasure(each.because, showing),
    remedy: each.remedy.map((one) => showMeasure(one, showing)),
    asks: each.asks === undefined ? undefined : showMeasure(each.asks, showing),
    sources: [...new Set(each.sources.map(showClause))].join('; '),
  };
}

/** `a/b/c`, `a/b`, `a`: the longest first. */
function* prefixes(at: string): Generator<string> {
  const steps = at.split('/');
  for (let count = steps.length; count > 0; count--) yield steps.slice(0, count).join('/');
}
