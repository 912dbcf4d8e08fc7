import type { PositionAdvice } from '@soundpost/core';
import { clauseJson } from './finding-json.ts';

export function positionsJson(advice: readonly PositionAdvice[]): unknown {
  return advice.map(({ name, elements, position, directions, because, sources }) => ({
    name,
    ...(elements === undefined ? {} : { elements }),
    position,
    directions,
    because,
    sources: sources.map(clauseJson),
  }));
}
