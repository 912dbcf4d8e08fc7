import { type Clause, type Finding, measureJson, showClause, showMeasure, wording } from '@soundpost/core';

export function clauseJson(cited: Clause): unknown {
  return {
    id: cited.source.id,
    title: cited.source.title,
    ...(cited.place === undefined ? {} : { place: cited.place }),
    how: cited.how ?? cited.source.how,
    shown: showClause(cited),
  };
}

export function findingJson(finding: Finding): unknown {
  return {
    rule: finding.rule,
    weight: finding.weight,
    at: finding.at,
    found: measureJson(finding.found),
    limit: measureJson(finding.limit),
    because: showMeasure(finding.because),
    remedy: finding.remedy.map((each) => showMeasure(each)),
    ...(finding.asks === undefined ? {} : { asks: showMeasure(finding.asks) }),
    sources: finding.sources.map(clauseJson),
    shown: wording(finding),
  };
}
