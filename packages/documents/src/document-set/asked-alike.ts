import { type Answer, answer, type DesignedPoint, type Level, type Target, valueIfStated } from '@soundpost/core';
import { grouped } from './grouped.ts';

interface PlacedTarget {
  readonly designed: DesignedPoint;
  readonly target: Target;
}

/** What several places ask of one type under one name, in the same surroundings. */
export interface AskedAlike {
  readonly places: readonly string[];
  /** Speaks for all of them where they are alike. */
  readonly first: PlacedTarget;
  /** Of the surfaces; absent where a temperature is not stated or unknown. */
  readonly coolest: number | undefined;
  readonly hottest: number | undefined;
  /** Of all their bands. */
  readonly low: Answer<number>;
  readonly high: Answer<number>;
  /** The least that must be seen at any of them, and the most that must be survived. */
  readonly smallest: Answer<Level> | undefined;
  readonly largest: Answer<Level> | undefined;
}

/**
 * What places ask, those with the same target, exposure and area together. What is unknown at one place is never hidden
 * in the range of others: such places stand alone, and levels of different quantities or detectors are never compared.
 */
export function askedAlike(points: readonly DesignedPoint[]): readonly AskedAlike[] {
  const asked = points.flatMap((designed) =>
    designed.point.targets.map((target): PlacedTarget => ({ designed, target })),
  );
  return grouped(asked, keyOf).map((alike): AskedAlike => {
    const first = alike[0]!;
    const surfaces = known(alike.map(({ designed }) => valueIfStated(designed.point.surfaceTemperature)));
    const bands = known(alike.map(({ target: { band } }) => (band.known ? band.value : undefined)));
    const { band } = first.target;
    return {
      places: [...new Set(alike.map(({ designed }) => designed.point.of))],
      first,
      coolest: surfaces.length === 0 ? undefined : Math.min(...surfaces),
      hottest: surfaces.length === 0 ? undefined : Math.max(...surfaces),
      low: band.known ? answer(Math.min(...bands.map(({ low }) => low))) : band,
      high: band.known ? answer(Math.max(...bands.map(({ high }) => high))) : band,
      smallest: outermost(
        alike.map(({ target }) => target.smallest),
        (one, other) => one < other,
      ),
      largest: outermost(
        alike.map(({ target }) => target.largest),
        (one, other) => one > other,
      ),
    };
  });
}

function keyOf({ designed, target }: PlacedTarget): string {
  const { surfaceTemperature, surroundings, of } = designed.point;
  const exposure = surroundings.values.exposure;
  const open = [surfaceTemperature, exposure].some((each) => each?.known === false) || !target.band.known;
  const levels = [target.smallest, target.largest].map(kindOfLevel);
  return JSON.stringify([
    target.name,
    valueIfStated(exposure),
    designed.area?.name,
    surfaceTemperature === undefined,
    ...levels,
    ...(open || levels.includes('unknown') ? [of] : []),
  ]);
}

function kindOfLevel(level: Answer<Level> | undefined): string {
  if (level === undefined) return 'none';
  return level.known ? `${level.value.quantity} ${level.value.detector}` : 'unknown';
}

function outermost(
  levels: readonly (Answer<Level> | undefined)[],
  beyond: (one: number, other: number) => boolean,
): Answer<Level> | undefined {
  return levels.reduce((outer, each) =>
    outer?.known === true && each?.known === true && beyond(each.value.value, outer.value.value) ? each : outer,
  );
}

function known<T>(all: readonly (T | undefined)[]): readonly T[] {
  return all.filter((each) => each !== undefined);
}
