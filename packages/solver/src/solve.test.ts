import { type KeepingProblem, mixedIntegerModel, preparedKeeping } from '@soundpost/core';
import { expect, test } from 'vitest';
import { solve } from './solve.ts';

/** Plants of a generator, with spares, stock and ways of two parts. */
function plantOf(seed: number): KeepingProblem {
  let state = seed;
  const next = (below: number) => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return Math.floor((state / 2147483648) * below);
  };
  const types = Array.from({ length: 8 }, (_, k) => ({
    name: `T${k}`,
    price: 20 + next(300),
    keeping: next(400),
    failuresPerLeadTime: [0, 0.02, 0.1][next(3)]!,
    inStock: [0, 0, 3][next(3)]!,
    rule: 'free' as const,
  }));
  return {
    types,
    serviceLevel: 0.95,
    requirements: Array.from({ length: 4 }, (_, r) => ({
      name: `R${r}`,
      points: Array.from({ length: 1 + next(2) }, (_, index) => `${r}/${index}`),
      ways: Array.from({ length: 2 + next(3) }, (_, w) => ({
        name: `W${r}-${w}`,
        parts: [...new Set([next(5), 5 + next(3)])].sort((a, b) => a - b),
        beside: next(100),
      })),
    })),
  };
}

/** The least cost by trying every way for every single point; the counts of spares are looked up, not modelled. */
function leastByTrying(problem: KeepingProblem): number {
  const points = problem.requirements.flatMap(({ points: all, ways }) => all.map(() => ways));
  const counts = new Array(problem.types.length).fill(0);
  const spares = (k: number, n: number): number => {
    const mean = n * problem.types[k]!.failuresPerLeadTime;
    let term = Math.exp(-mean);
    let sum = term;
    let s = 0;
    while (sum < problem.serviceLevel) {
      s += 1;
      term *= mean / s;
      sum += term;
    }
    return s;
  };
  let least = Number.POSITIVE_INFINITY;
  const tried = (at: number, beside: number): void => {
    if (at < points.length) {
      for (const way of points[at]!) {
        for (const k of way.parts) counts[k]++;
        tried(at + 1, beside + way.beside);
        for (const k of way.parts) counts[k]--;
      }
      return;
    }
    const cost = problem.types.reduce(
      (sum, { keeping, price, inStock }, k) =>
        counts[k] === 0 ? sum : sum + keeping + price * Math.max(0, counts[k] + spares(k, counts[k]) - inStock),
      beside,
    );
    least = Math.min(least, cost);
  };
  tried(0, 0);
  return least;
}

test('independent: the solver proves the cost that trying every choice of a small plant finds', {
  timeout: 300_000,
}, async () => {
  for (let seed = 1; seed <= 12; seed++) {
    const plant = plantOf(seed);
    const { problem, left, choice } = preparedKeeping(plant, 300);
    const model = mixedIntegerModel(problem, left);
    const solved = await solve({ text: model.text, seconds: 60, start: model.values(choice) });
    const least = leastByTrying(plant);
    expect(solved.ended, `seed ${seed}`).toBe('optimal');
    expect(solved.cost, `seed ${seed}`).toBeCloseTo(least, 4);
    expect(model.choice((column) => solved.values[column] ?? 0).cost, `seed ${seed}`).toBeCloseTo(least, 6);
  }
});

test('the start handed over is allowed by the model and costs there what the choice costs', async () => {
  const { problem, left, choice } = preparedKeeping(plantOf(3), 100);
  const model = mixedIntegerModel(problem, left);
  const fixed = Object.entries(model.values(choice)).map(([column, value]) => ` ${column} = ${value}`);
  const zero = [...new Set(model.text.match(/\b[xyzb]\d+(_\d+)?\b/g))]
    .filter((column) => model.values(choice)[column] === undefined)
    .map((column) => ` ${column} = 0`);
  const text = model.text.replace('General\n', `${[...fixed, ...zero].join('\n')}\nGeneral\n`);
  const solved = await solve({ text, seconds: 10 });
  expect(solved.ended).toBe('optimal');
  expect(solved.cost).toBeCloseTo(choice.cost, 6);
});

test('negative: a problem without a solution is said to have none', async () => {
  const solved = await solve({
    text: 'Minimize\n obj: x\nSubject To\n r: x >= 2\nBounds\n 0 <= x <= 1\nGeneral\n x\nEnd\n',
    seconds: 5,
  });
  expect(solved.ended).toBe('no solution');
});
