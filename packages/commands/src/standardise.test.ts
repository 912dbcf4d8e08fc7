import { expect, test } from 'vitest';
import { standardise } from './standardise.ts';
import { done, fileOf, flowing, pumpPath, world } from './testing/house.ts';

const storePath = 'examples/standardise/store.yaml';

interface Json {
  readonly cost: number;
  readonly atLeast: number;
  readonly costAsDesigned: number | null;
  readonly kept: readonly { name: string; inUse: number; toBuy: number; cost: number; at: readonly string[] }[];
  readonly chosen: readonly { point: string; way: string }[];
  readonly unmet: readonly string[];
  readonly unpriced: readonly string[];
  readonly without: readonly { name: string; costsMore: { atLeast: number; atMost: number } | null }[];
}

const store = (parts: string) => `soundpost: store
version: 1
keeping:
  title: a store of a test
  keeping-per-year: 100 EUR
  horizon: 1 year
  service-level: 95 %
${parts}`;

const run = (parts?: string, given: Readonly<Record<string, unknown>> = {}) =>
  done(
    standardise,
    { plant: pumpPath, store: storePath, substitutes: false, ...given },
    world({ [storePath]: parts === undefined ? fileOf(storePath) : store(parts) }),
  );

const two = `transducers:
  ACC-100: { price: 300 EUR, lead-time: 4 weeks, between-failures: 40 years }
  LPV-25: { price: 200 EUR, lead-time: 4 weeks, between-failures: 40 years }
mounts:
  stud: { price: 10 EUR, lead-time: 1 week, between-failures: 100 years }
`;

test('worked by hand: three part numbers of 100 EUR a year, one piece of each transducer, two studs', async () => {
  const { json, exit } = await run(two);
  const { cost, atLeast, kept } = json as Json;
  expect(exit).toBe(0);
  expect(kept.map(({ name, inUse }) => [name, inUse])).toEqual([
    ['ACC-100', 1],
    ['LPV-25', 1],
    ['stud', 2],
  ]);
  expect(cost).toBeCloseTo(3 * 100 + 300 + 200 + 2 * 10, 6);
  expect(atLeast).toBeCloseTo(cost, 6);
});

test('pieces in stock are used before any is bought', async () => {
  const { json } = await run(two.replace('price: 300 EUR,', 'price: 300 EUR, in-stock: 5,'));
  const { cost, kept } = json as Json;
  expect(kept.find(({ name }) => name === 'ACC-100')).toMatchObject({ inUse: 1, toBuy: 0 });
  expect(cost).toBeCloseTo(3 * 100 + 200 + 2 * 10, 6);
});

test('a forbidden part leaves a point without any: it is named, and the command ends with 1', async () => {
  const outcome = await run(two.replace('price: 200 EUR,', 'price: 200 EUR, rule: forbidden,'));
  expect(outcome.exit).toBe(1);
  expect((outcome.json as Json).unmet).toHaveLength(1);
  expect(flowing(outcome)).toContain('met by no allowed and priced candidate');
});

test('a part without a price is not chosen, and said to be unpriced', async () => {
  const outcome = await run(two);
  expect((outcome.json as Json).unpriced).toContain('ACC-100W');
  expect(flowing(outcome)).toMatch(/No price in the store for .*ACC-100W/);
});

test('what is not known of a store is asked for, and nothing stands in for it', async () => {
  const outcome = await run(
    two.replace('lead-time: 4 weeks, between-failures: 40 years', 'between-failures: 40 years'),
  );
  expect(flowing(outcome)).toContain('ACC-100: lead time, by which its spares are reckoned is not known');
});

test('where spares cannot be reckoned they read unknown, never none, and the cost is a least one', async () => {
  const given = two.replace('lead-time: 4 weeks, between-failures: 40 years', 'between-failures: 40 years');
  const outcome = await run(given);
  const kept = (outcome.json as { kept: readonly { name: string; spares: number | null }[] }).kept;
  expect(kept.find(({ name }) => name === 'ACC-100')!.spares).toBeNull();
  expect(kept.find(({ name }) => name === 'stud')!.spares).toBe(0);
  expect(flowing(outcome)).toMatch(/ACC-100 1 unknown 0 ≥ 1 ≥ \d+ EUR/);
  expect(flowing(outcome)).toContain('without what is not known, listed below');
});

test('two currencies are refused, since no rate of exchange is known', async () => {
  const outcome = await run(two.replace('200 EUR', '200 CHF'));
  expect(outcome.exit).toBe(2);
  expect(flowing(outcome)).toMatch(/one currency/);
});

test('a bare amount is refused with what is expected', async () => {
  const outcome = await run(two.replace('200 EUR', '200'));
  expect(outcome.exit).toBe(2);
  expect(flowing(outcome)).toMatch(/currency/);
});

test('the time of the solver is a number of seconds', async () => {
  const outcome = await run(two, { seconds: 'long' });
  expect(outcome.exit).toBe(2);
  expect(flowing(outcome)).toMatch(/seconds/);
});

test('law: what is kept pays the cost together with fitting, and each price of leaving one out is not below zero', async () => {
  const { json } = await run();
  const { cost, kept, without, chosen } = json as Json;
  const prices = fileOf(storePath);
  const fitting = (name: string) =>
    Number(new RegExp(`^ {2}${name}: .*?fitting: (\\d+) EUR`, 'm').exec(prices)?.[1] ?? 0);
  const beside = chosen.reduce(
    (sum, { way }) => sum + way.split(' on ').reduce((inner, name) => inner + fitting(name), 0),
    0,
  );
  expect(kept.reduce((sum, each) => sum + each.cost, beside)).toBeCloseTo(cost, 6);
  for (const { costsMore } of without) {
    if (costsMore === null) continue;
    expect(costsMore.atLeast).toBeGreaterThanOrEqual(0);
    expect(costsMore.atMost).toBeGreaterThanOrEqual(costsMore.atLeast - 1e-6);
  }
});

test('negative: the plant as designed never costs less than what is chosen', async () => {
  const { cost, costAsDesigned } = (await run()).json as Json;
  expect(costAsDesigned).not.toBeNull();
  expect(costAsDesigned!).toBeGreaterThanOrEqual(cost - 1e-6);
});
