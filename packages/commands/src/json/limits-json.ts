import type { Boundaries, MachineLimits } from '@soundpost/core';
import { findingJson } from './finding-json.ts';
import { answerJson, levelJson, quantityJson, statedJson } from './values-json.ts';

function boundariesJson({ ab, bc, cd }: Boundaries): unknown {
  return { ab: levelJson(ab), bc: levelJson(bc), cd: levelJson(cd) };
}

export function limitsJson(limits: MachineLimits): unknown {
  return {
    source: limits.title,
    boundaries: answerJson(limits.boundaries, boundariesJson),
    ...(limits.clearance === undefined
      ? {}
      : { clearance: statedJson(limits.clearance, (value) => quantityJson('length', value)) }),
    findings: limits.findings.map(findingJson),
  };
}
