import fc from 'fast-check';
import { expect, test } from 'vitest';
import { choiceOf } from './choice.ts';
import { costOf, costStairs, lineUnder } from './part-cost.ts';
import type { KeepingProblem, PartType } from './part-type.ts';
import { preparedKeeping } from './prepared.ts';
import { reduced } from './reduced.ts';
import { boundOf } from './shared-cost-bound.ts';

const money = fc.integer({ min: 0, max: 400 });

const type = fc.record({
  price: money,
  keeping: money,
  failuresPerLeadTime: fc.constantFrom(0, 0.02, 0.2),
  inStock: fc.constantFrom(0, 0, 0, 2),
  rule: fc.constantFrom('free', 'free', 'free', 'free', 'pinned', 'forbidden'),
}) as fc.Arbitrary<Omit<PartType, 'name'>>;

/** Plants so small that every choice can be tried. */
const smallPlant = fc
  .record({
    types: fc.array(type, { minLength: 2, maxLength: 5 }),
    points: fc.array(fc.integer({ min: 1, max: 2 }), { minLength: 1, maxLength: 3 }),
    seed: fc.integer({ min: 1, max: 1e6 }),
  })
  .map(({ types, points, seed }): KeepingProblem => {
    let state = seed;
    const next = (below: number) => {
      state = (state * 1103515245 + 12345) % 2147483648;
      return Math.floor((state / 2147483648) * below);
    };
    return {
      types: types.map((each, k) => ({ ...each, name: `T${k}` })),
      serviceLevel: 0.95,
      requirements: points.map((count, p) => ({
        name: `R${p}`,
        points: Array.from({ length: count }, (_, index) => `R${p}/${index}`),
        ways: Array.from({ length: 1 + next(3) }, (_, w) => ({
          name: `W${p}-${w}`,
          parts: [...new Set([next(types.length), next(types.length)])].sort((a, b) => a - b),
          beside: next(200),
        })),
      })),
    };
  });

/** The least cost by trying every way for every single point. */
function leastByTrying(problem: KeepingProblem): number {
  const counts = new Array(problem.types.length).fill(0);
  const points = problem.requirements.flatMap(({ points: all, ways }) => {
    const open = ways.filter((way) => way.parts.every((k) => problem.types[k]!.rule !== 'forbidden'));
    return open.length === 0 ? [] : all.map(() => open);
  });
  const stairs = problem.types.map((each) => costStairs(each, Math.max(1, points.length), problem.serviceLevel));
  let least = Number.POSITIVE_INFINITY;
  const tried = (at: number, beside: number): void => {
    if (at === points.length) {
      const cost = problem.types.reduce((sum, each, k) => sum + costOf(each, stairs[k]!, counts[k]), beside);
      least = Math.min(least, cost);
      return;
    }
    for (const way of points[at]!) {
      for (const k of way.parts) counts[k]++;
      tried(at + 1, beside + way.beside);
      for (const k of way.parts) counts[k]--;
    }
  };
  tried(0, 0);
  return least;
}

test('law: the bound never passes the least cost found by trying everything, nor does a choice fall below it', () => {
  fc.assert(
    fc.property(smallPlant, (plant) => {
      const least = leastByTrying(plant);
      const { choice, bound } = preparedKeeping(plant, 300);
      expect(bound.value).toBeLessThanOrEqual(least + 1e-6);
      expect(choice.cost).toBeGreaterThanOrEqual(least - 1e-6);
    }),
    { numRuns: 300, seed: 7 },
  );
});

test('law: shares never exceed the fixed cost of their type, and give the bound again by plain addition', () => {
  fc.assert(
    fc.property(smallPlant, (plant) => {
      const { problem, bound } = preparedKeeping(plant, 150);
      const sums = new Float64Array(plant.types.length);
      bound.share.forEach((each, index) => {
        expect(each).toBeGreaterThanOrEqual(0);
        sums[problem.pairPart[index]!]! += each;
      });
      for (const [k, { fixed }] of bound.lines.entries())
        expect(sums[k]!).toBeLessThanOrEqual(fixed * (1 + 1e-12) + 1e-12);
      expect(boundOf(problem, bound.lines, bound.share)).toBeCloseTo(bound.value, 6);
    }),
    { numRuns: 100, seed: 7 },
  );
});

test('law: what is left to decide still holds a choice of the least cost', () => {
  fc.assert(
    fc.property(smallPlant, (plant) => {
      const { problem, left, choice } = preparedKeeping(plant, 300);
      const kept: KeepingProblem = {
        ...plant,
        requirements: problem.classes.map((each, c) => ({
          name: `class ${c}`,
          points: each.members.flatMap(({ points }) => points),
          ways: each.ways.filter((_, index) => left.ways[problem.firstWay[c]! + index] === 1),
        })),
      };
      const least = leastByTrying(plant);
      expect(Math.min(leastByTrying(kept), choice.cost)).toBeCloseTo(least, 6);
    }),
    { numRuns: 300, seed: 7 },
  );
});

test('law: the line under the stairs lies under them everywhere and starts at zero or above', () => {
  fc.assert(
    fc.property(type, fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 300 }), (each, most, near) => {
      const named = { ...each, name: 'T' };
      const stairs = costStairs(named, most, 0.95);
      const { fixed, slope } = lineUnder(named, stairs, Math.min(near, most));
      expect(fixed).toBeGreaterThanOrEqual(0);
      const paid = each.rule === 'pinned' ? each.keeping : 0;
      for (let n = 1; n <= most; n++) {
        expect(fixed + slope * n).toBeLessThanOrEqual(costOf(named, stairs, n) - paid + 1e-6);
      }
    }),
    { numRuns: 300, seed: 7 },
  );
});

test('law: merging equal points and leaving out dominated ways does not change the least cost', () => {
  fc.assert(
    fc.property(smallPlant, (plant) => {
      const { classes } = reduced(plant);
      const after: KeepingProblem = {
        ...plant,
        requirements: classes.map(({ members, ways }, c) => ({
          name: `class ${c}`,
          points: members.flatMap(({ points }) => points),
          ways,
        })),
      };
      expect(leastByTrying(after)).toBeCloseTo(leastByTrying(plant), 6);
    }),
    { numRuns: 300, seed: 11 },
  );
});

test('worked by hand: two types, one part number for both is cheaper until keeping another costs less than it saves', () => {
  const plant = (keeping: number): KeepingProblem => ({
    serviceLevel: 0.95,
    types: [
      { name: 'dear', price: 300, keeping, failuresPerLeadTime: 0, inStock: 0, rule: 'free' },
      { name: 'cheap', price: 100, keeping, failuresPerLeadTime: 0, inStock: 0, rule: 'free' },
    ],
    requirements: [
      { name: 'hard', points: ['a'], ways: [{ name: 'dear', parts: [0], beside: 0 }] },
      {
        name: 'easy',
        points: ['b', 'c'],
        ways: [
          { name: 'dear', parts: [0], beside: 0 },
          { name: 'cheap', parts: [1], beside: 0 },
        ],
      },
    ],
  });
  // Both kept: 2 keeping + 300 + 2·100. One kept: keeping + 3·300. The same at keeping = 400.
  expect(preparedKeeping(plant(399)).choice.cost).toBe(2 * 399 + 500);
  expect(preparedKeeping(plant(401)).choice.cost).toBe(401 + 900);
  expect([...preparedKeeping(plant(401)).choice.counts]).toEqual([3, 0]);
});

test('negative: a choice that takes a dearer way is dearer, so the comparisons above can fail', () => {
  const plant: KeepingProblem = {
    serviceLevel: 0.95,
    types: [{ name: 'T', price: 10, keeping: 5, failuresPerLeadTime: 0, inStock: 0, rule: 'free' }],
    requirements: [
      {
        name: 'R',
        points: ['p'],
        ways: [{ name: 'A', parts: [0], beside: 1 }],
      },
    ],
  };
  const problem = reduced(plant);
  expect(choiceOf(problem, [[{ way: 0, points: 1 }]]).cost).toBe(16);
  expect(choiceOf(problem, [[{ way: 0, points: 2 }]]).cost).toBe(27);
});
