import type { Boundaries, MachineLimits } from '@soundpost/core';
import { findingJson } from './finding-json.ts';
import { answerJson, levelJson } from './values-json.ts';

function boundariesJson({ ab, bc, cd }: Boundaries): unknown {
  return { ab: levelJson(ab), bc: levelJson(bc), cd: levelJson(cd) };
}

export function limitsJson(limits: MachineLimits): unknown {
  return {
    source: limits.title,
    boundaries: answerJson(limits.boundaries, boundariesJson),
    findings: limits.findings.map(findingJson),
  };
}
