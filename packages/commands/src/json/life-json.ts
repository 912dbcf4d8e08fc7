import { type PointLife, showLife } from '@soundpost/core';
import { clauseJson } from './finding-json.ts';
import { missingJson, quantityJson } from './values-json.ts';

/** Effects of the surroundings on the life of the chain; `applies` is true, or names what is missing to tell. */
export function lifeJson(all: readonly PointLife[]): unknown {
  return all.map(({ effect, missing }) => ({
    effect: effect.name,
    part: effect.part,
    cause: effect.cause,
    shows: effect.shows,
    applies: missing.length === 0 ? true : missingJson(missing),
    ...(effect.life === undefined
      ? {}
      : { life: { low: quantityJson('time', effect.life.low), high: quantityJson('time', effect.life.high) } }),
    shown: showLife(effect),
    sources: effect.sources.map(clauseJson),
  }));
}
