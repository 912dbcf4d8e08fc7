import type { Judgement, Measure } from '@soundpost/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { judgedAlike } from './judged-alike.ts';

const change = (fraction: number): Measure => ({ is: 'change', fraction });
const inWords = (words: string): Measure => ({ is: 'words', words });

const judged = (found: Measure, margin?: number, limit = 'ten per cent'): Judgement => ({
  rule: 'chain/response',
  outcome: 'meets',
  what: 'response error',
  found,
  limit: inWords(limit),
  ...(margin === undefined ? {} : { margin }),
});

test('numbers of one requirement make one row: their range, and the one nearest to the limit with its place', () => {
  const [row, ...others] = judgedAlike(
    [
      { place: 'P-1', judgement: judged(change(-0.07), 3) },
      { place: 'P-2', judgement: judged(change(0.02), 14) },
      { place: 'P-3', judgement: judged(change(0.04), 8) },
    ],
    {},
  );
  expect(others).toEqual([]);
  expect(row).toMatchObject({ places: ['P-1', 'P-2', 'P-3'], found: '−7 % to +4 %', differs: true });
  expect(row!.worst.place).toBe('P-1');
});

test('what is found in other words, against another limit or with another outcome stands in a row of its own', () => {
  const one = judged(inWords('current-loop'));
  const rows = judgedAlike(
    [
      { place: 'P-1', judgement: one },
      { place: 'P-2', judgement: judged(inWords('charge')) },
      { place: 'P-3', judgement: judged(inWords('current-loop'), undefined, 'five per cent') },
      { place: 'P-4', judgement: { ...one, outcome: 'warns' } },
      { place: 'P-5', judgement: one },
    ],
    {},
  );
  expect(rows.map(({ places }) => places)).toEqual([['P-1', 'P-5'], ['P-2'], ['P-3'], ['P-4']]);
  expect(rows.every(({ differs }) => !differs)).toBe(true);
});

test('law: every place stands in a row whose range holds what was found there and whose worst is no better', () => {
  const placed = fc.record({
    place: fc.integer({ min: 1, max: 40 }).map((n) => `P-${n}`),
    judgement: fc
      .tuple(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: -60, max: 60, noNaN: true }))
      .map(([fraction, margin]) => judged(change(fraction), margin)),
  });
  fc.assert(
    fc.property(fc.array(placed, { minLength: 1, maxLength: 60 }), (all) => {
      const [row] = judgedAlike(all, {});
      expect(new Set(row!.places)).toEqual(new Set(all.map(({ place }) => place)));
      expect(row!.worst.judgement.margin).toBe(Math.min(...all.map(({ judgement }) => judgement.margin!)));
    }),
  );
});
