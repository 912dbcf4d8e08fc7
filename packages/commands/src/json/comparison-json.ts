import { type CheckResult, type Comparison, measureJson, showMeasure } from '@soundpost/core';

export function comparisonJson({ results, points, strangers }: Comparison): unknown {
  return { points, checks: results.map(resultJson), strangers };
}

function resultJson(result: CheckResult): unknown {
  return {
    check: result.check,
    title: result.title,
    ...(result.of === undefined ? {} : { of: result.of }),
    at: result.at,
    record: result.record,
    verdict: result.verdict,
    expected: measureJson(result.expected),
    tolerance: measureJson(result.tolerance),
    found: measureJson(result.found),
    ...(result.interval === undefined ? {} : { interval: measureJson(result.interval) }),
    because: showMeasure(result.because),
    causes: result.causes.map(({ cause, evidence, next }) => ({
      cause: showMeasure(cause),
      evidence: showMeasure(evidence),
      next: showMeasure(next),
    })),
    needs: result.needs.map((each) => showMeasure(each)),
  };
}
