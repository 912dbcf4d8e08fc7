import { expect, test } from 'vitest';
import { shareOf } from './detection.ts';

/** Closed forms: none of n leaves 1 − (α/2)^(1/n), all of n leaves (α/2)^(1/n). */
test('printed: the interval of none and of all of n, by the closed form', () => {
  expect(shareOf(0, 1000).high).toBeCloseTo(1 - 0.025 ** (1 / 1000), 12);
  expect(shareOf(1000, 1000).low).toBeCloseTo(0.025 ** (1 / 1000), 12);
  expect(shareOf(0, 1000).low).toBe(0);
});

test('law: the interval of a share and that of its complement mirror each other and hold the share', () => {
  for (const [k, n] of [
    [1, 20],
    [7, 20],
    [950, 1000],
  ] as const) {
    const [own, other] = [shareOf(k, n), shareOf(n - k, n)];
    expect(own.low + other.high).toBeCloseTo(1, 10);
    expect(own.low).toBeLessThan(own.share);
    expect(own.high).toBeGreaterThan(own.share);
  }
});
