import { Broken } from '../quantity/index.ts';
import { clopperPearson1934 } from '../source/clopper-pearson-1934.ts';
import { clause } from '../source/source.ts';
import { incompleteBeta } from '../uncertainty/incomplete-beta.ts';

export const intervalSource = clause(clopperPearson1934);

/** How often something happened, and the interval that holds its probability at the level. */
export interface Share {
  readonly happened: number;
  readonly of: number;
  readonly share: number;
  readonly low: number;
  readonly high: number;
  readonly level: number;
}

/**
 * The interval of Clopper and Pearson for k of n at a level 1 − α: low solves I_p(k, n − k + 1) = α/2, high solves
 * I_p(k + 1, n − k) = 1 − α/2; 0 and 1 where k is none or all. Both by halving.
 */
export function shareOf(happened: number, of: number, level = 0.95): Share {
  if (!(Number.isInteger(happened) && Number.isInteger(of) && of > 0 && happened >= 0 && happened <= of)) {
    throw new Broken('a share is so many of so many', { happened, of });
  }
  const tail = (1 - level) / 2;
  const solved = (a: number, b: number, probability: number) => {
    let [low, high] = [0, 1];
    for (let step = 0; step < 60; step++) {
      const middle = (low + high) / 2;
      if (incompleteBeta(middle, a, b) < probability) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };
  return {
    happened,
    of,
    share: happened / of,
    low: happened === 0 ? 0 : solved(happened, of - happened + 1, tail),
    high: happened === of ? 1 : solved(happened + 1, of - happened, 1 - tail),
    level,
  };
}

/** How often a fault of a size is detected. */
export interface DetectionAtSize {
  readonly size: number;
  readonly detected: Share;
}

/** Detection against size: each size tried with each seed; `detects` rehearses one and says whether it was seen. */
export function detectionAgainstSize(
  sizes: readonly number[],
  seeds: readonly number[],
  detects: (size: number, seed: number) => boolean,
  level = 0.95,
): readonly DetectionAtSize[] {
  return sizes.map((size) => ({
    size,
    detected: shareOf(seeds.filter((seed) => detects(size, seed)).length, seeds.length, level),
  }));
}
