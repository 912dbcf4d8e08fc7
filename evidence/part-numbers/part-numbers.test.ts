import { readFileSync } from 'node:fs';
import {
  type KeepingProblem,
  mixedIntegerModel,
  poissonAtMost,
  preparedKeeping,
  spareSteps,
  sparesFor,
} from '@soundpost/core';
import { solve } from '@soundpost/solver';
import { describe, expect, test } from 'vitest';

interface Stored {
  readonly spares: readonly { mean: number; level: number; spares: number; atMost: number }[];
  readonly plants: readonly {
    readonly types: readonly { price: number; keeping: number }[];
    readonly needs: readonly { points: number; ways: readonly { parts: readonly number[]; beside: number }[] }[];
    readonly least: number;
  }[];
}

const stored = JSON.parse(readFileSync(new URL('./spares-and-plants.json', import.meta.url), 'utf8')) as Stored;

describe('independent: spares as scipy.stats.poisson counts them', () => {
  test.each(stored.spares)('mean $mean at $level', ({ mean, level, spares, atMost }) => {
    expect(sparesFor(1, mean, level)).toBe(spares);
    expect(poissonAtMost(Math.trunc(mean), mean)).toBeCloseTo(atMost, 10);
  });

  test('the steps by halving are those of counting one by one', () => {
    for (const a of [0.001, 0.02, 0.4]) {
      const { spares, upTo } = spareSteps(400, a, 0.95);
      let step = 0;
      for (let n = 1; n <= 400; n++) {
        if (n > upTo[step]!) step += 1;
        expect(spares[step], `${n} pieces of ${a}`).toBe(sparesFor(n, a, 0.95));
      }
      expect(upTo.at(-1)).toBe(400);
    }
  });
});

describe('independent: the least cost as scipy.optimize.milp proves it from its own model', () => {
  test.each(stored.plants.map((plant, index) => ({ plant, index })))(
    'plant $index',
    { timeout: 300_000 },
    async ({ plant }) => {
      const problem: KeepingProblem = {
        serviceLevel: 0.95,
        types: plant.types.map((type, k) => ({
          ...type,
          name: `T${k}`,
          failuresPerLeadTime: 0,
          inStock: 0,
          rule: 'free',
        })),
        requirements: plant.needs.map(({ points, ways }, n) => ({
          name: `N${n}`,
          points: Array.from({ length: points }, (_, index) => `N${n}/${index}`),
          ways: ways.map((way, index) => ({ ...way, name: `W${index}` })),
        })),
      };
      const prepared = preparedKeeping(problem);
      expect(prepared.bound.value).toBeLessThanOrEqual(plant.least * (1 + 1e-9));
      expect(prepared.choice.cost).toBeGreaterThanOrEqual(plant.least * (1 - 1e-9));
      const model = mixedIntegerModel(prepared.problem, prepared.left);
      const solved = await solve({ text: model.text, seconds: 240, start: model.values(prepared.choice) });
      expect(solved.ended).toBe('optimal');
      expect(model.choice((column) => solved.values[column] ?? 0).cost / plant.least).toBeCloseTo(1, 8);
    },
  );
});
