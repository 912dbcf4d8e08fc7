import fc from 'fast-check';
import { expect, test } from 'vitest';
import { linearAxis, logAxis, oneTwoFive, roundDown, roundUp, shortNumber } from './axis.ts';

const positive = fc.double({ min: 1e-12, max: 1e12, noNaN: true });

test('law: rounding to 1, 2, 5 brackets every value, by no more than a factor 2.5', () => {
  fc.assert(
    fc.property(positive, (value) => {
      const [low, high] = [roundDown(value), roundUp(value)];
      expect(low).toBeLessThanOrEqual(value * (1 + 1e-9));
      expect(high).toBeGreaterThanOrEqual(value * (1 - 1e-9));
      expect(high / low).toBeLessThanOrEqual(2.5 * (1 + 1e-9));
    }),
  );
});

test('the marks of one decade are 1, 2, 5 and the next 1', () => {
  expect(oneTwoFive({ low: 0.1, high: 1 })).toEqual([0.1, 0.2, 0.5, 1]);
  expect(oneTwoFive({ low: 3, high: 60 })).toEqual([5, 10, 20, 50]);
});

test('law: a log axis keeps order and ratio: equal ratios are equally long', () => {
  fc.assert(
    fc.property(positive, fc.double({ min: 1.01, max: 1e6, noNaN: true }), (low, ratio) => {
      const axis = logAxis({ low, high: low * ratio ** 3 }, { from: 40, to: 640 });
      expect(axis.at(low)).toBeCloseTo(40, 6);
      expect(axis.at(low * ratio) - axis.at(low)).toBeCloseTo(200, 4);
      expect(axis.at(low * ratio ** 3)).toBeCloseTo(640, 4);
      for (const [index, tick] of axis.ticks.entries()) {
        if (index > 0) expect(tick.at).toBeGreaterThan(axis.ticks[index - 1]!.at);
      }
    }),
  );
});

test('law: written marks of a log axis stand apart, however many decades it has', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 14 }), (decades) => {
      const axis = logAxis({ low: 1e-3, high: 1e-3 * 10 ** decades }, { from: 500, to: 0 });
      const written = axis.ticks.filter((tick) => tick.text !== undefined);
      for (const [index, tick] of written.entries()) {
        if (index > 0) expect(Math.abs(tick.at - written[index - 1]!.at)).toBeGreaterThanOrEqual(18);
      }
    }),
  );
});

test('a linear axis has its marks at 1, 2 or 5, zero among them', () => {
  const axis = linearAxis({ low: -9, high: 9 }, { from: 0, to: 180 }, 10);
  expect(axis.ticks.map((tick) => tick.text)).toEqual([
    '\u22128',
    '\u22126',
    '\u22124',
    '\u22122',
    '0',
    '2',
    '4',
    '6',
    '8',
  ]);
  expect(axis.at(0)).toBe(90);
});

test('numbers at an axis are short', () => {
  expect([0.05, 1, 500, 5000, 20_000, 3e6].map(shortNumber)).toEqual(['0.05', '1', '500', '5000', '20 k', '3 M']);
});
