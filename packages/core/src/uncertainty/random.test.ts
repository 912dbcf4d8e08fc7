import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { randomFrom, xoshiro128 } from './random.ts';

const answers = JSON.parse(
  readFileSync(new URL('../../../../evidence/scipy/uncertainty.json', import.meta.url), 'utf8'),
);

test('printed: xoshiro128** gives the words of the C reference (read: test data of an open 8-bit port of it)', () => {
  const next = xoshiro128([0x964d4a0c, 0xd40ab895, 0xad7fdecb, 0x3006f0f0]);
  expect([next(), next(), next(), next()]).toEqual([0xf1391922, 0x6fe53806, 0xa5be2840, 0xf510ee70]);
});

test('printed: from state 1, 2, 3, 4 the words begin 11520, 0, 5927040 (from memory: test of a public library)', () => {
  const next = xoshiro128([1, 2, 3, 4]);
  expect([next(), next(), next()]).toEqual([11520, 0, 5927040]);
});

test('law: one seed gives one stream, another seed another', () => {
  fc.assert(
    fc.property(fc.nat(4_294_967_295), (seed) => {
      const stream = (of: number) => {
        const random = randomFrom(of);
        return [random.uniform(), random.normal(), random.normal(), random.chiSquare(4)];
      };
      expect(stream(seed)).toEqual(stream(seed));
      expect(stream(seed)).not.toEqual(stream((seed + 1) % 4_294_967_296));
    }),
  );
});

test('law: uniform numbers stay strictly between 0 and 1', () => {
  const random = randomFrom(7);
  const drawn = Array.from({ length: 100_000 }, random.uniform);
  expect(drawn.every((each) => each > 0 && each < 1)).toBe(true);
});

test.each(Object.entries<number[]>(answers.chiSquare))(
  'independent: chi-square numbers of %s degrees of freedom fall below the quantiles of scipy as often as they should',
  (degrees, quantiles) => {
    const random = randomFrom(11);
    const count = 200_000;
    const drawn = Array.from({ length: count }, () => random.chiSquare(Number(degrees)));
    for (const [i, probability] of (answers.probabilities as number[]).entries()) {
      const below = drawn.filter((each) => each < quantiles[i]!).length / count;
      const error = Math.sqrt((probability * (1 - probability)) / count);
      expect(Math.abs(below - probability), `at probability ${probability}`).toBeLessThan(4.5 * error);
    }
  },
);
