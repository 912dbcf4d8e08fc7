import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between, plotted } from './curve.ts';
import type { Point } from './drawing.ts';

const height = fc.double({ min: -1000, max: 1000, noNaN: true });

test('law: what is left of a curve lies between both heights, and loses no point that does', () => {
  fc.assert(
    fc.property(fc.array(fc.option(height, { nil: undefined }), { maxLength: 40 }), (heights) => {
      const curve = heights.map((y, x): Point | undefined => (y === undefined ? undefined : [x, y]));
      const parts = between(curve, -100, 100);
      for (const [, y] of parts.flat()) {
        expect(y).toBeGreaterThanOrEqual(-100 - 1e-9);
        expect(y).toBeLessThanOrEqual(100 + 1e-9);
      }
      const kept = parts.flat();
      for (const [index, point] of curve.entries()) {
        const beside = curve[index - 1] ?? curve[index + 1];
        if (point === undefined || beside === undefined || Math.abs(point[1]) > 100) continue;
        expect(kept.some(([x, y]) => x === point[0] && y === point[1])).toBe(true);
      }
    }),
  );
});

test('a curve is cut where it crosses the edge, not at the sample before', () => {
  expect(
    between(
      [
        [0, 0],
        [10, 200],
      ],
      0,
      100,
    ),
  ).toEqual([
    [
      [0, 0],
      [5, 100],
    ],
  ]);
});

test('law: the samples of a curve rise, and stand close about a sharp turn', () => {
  const at = plotted(1, 10_000, [300]);
  expect([...at].sort((a, b) => a - b)).toEqual(at);
  expect(at.filter((each) => Math.abs(each / 300 - 1) < 0.16).length).toBeGreaterThan(24);
});
