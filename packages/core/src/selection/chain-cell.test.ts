import { expect, test } from 'vitest';
import { changed, input, mount, parts, point, transducer } from '../../../../evidence/bench.ts';
import { outcomes } from '../chain/rules/rule.ts';
import { usualPolicy } from '../demand/policy.ts';
import { type Appraisal, appraisal, cells, chainCell } from './appraisal.ts';

const looked = point({
  line: { see: 'line', at: '148.6 Hz', smallest: '0.1 mm/s rms', largest: '10 mm/s rms', spacing: '0.3125 Hz' },
  burst: { see: 'burst', at: '2..10 kHz', smallest: '0.1 g peak', largest: '5 g peak', tolerance: '±3 dB' },
});

const appraised = (change: Parameters<typeof parts>[0] = {}) => appraisal(looked, parts(change), usualPolicy);

/** Chains that pass, that fail as a whole, and of which something is not known. */
const chains: readonly (readonly [string, Appraisal])[] = [
  ['a sound chain', appraised()],
  ['a magnet', appraised({ mount: mount('magnet-2pole') })],
  ['too little compliance', appraised({ input: changed(input('PORT-24'), { compliance: '15 V' }) })],
  ['bias unknown', appraised({ transducer: changed(transducer('ACC-100'), { bias: 'unknown' }) })],
  ['another range', appraised({ transducer: transducer('ACC-500') })],
];

test.each(chains)(
  'law, %s: what is judged stands in the cell of its target or in that of the chain, and once',
  (_, each) => {
    const inCells = [...cells(each), chainCell(each)].flatMap((cell) => cell.judgements);
    expect(inCells).toHaveLength(each.judgements.length);
    expect(new Set(inCells)).toEqual(new Set(each.judgements));
    expect(chainCell(each).judgements.every((judgement) => judgement.target === undefined)).toBe(true);
  },
);

test.each(chains)('law, %s: the cell has the worst outcome, decided by the least margin among those', (_, each) => {
  const { outcome, decides, judgements } = chainCell(each);
  expect(judgements).toContain(decides);
  expect(decides!.outcome).toBe(outcome);
  for (const judgement of judgements) {
    expect(outcomes.indexOf(judgement.outcome)).toBeGreaterThanOrEqual(outcomes.indexOf(outcome));
    if (judgement.outcome === outcome && decides!.margin !== undefined) {
      expect(judgement.margin ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(decides!.margin);
    }
  }
});

test.each(chains)('law, %s: the worst cell, that of the chain among them, is the verdict', (_, each) => {
  const found = [...cells(each), chainCell(each)].map((cell) => cell.outcome);
  expect(outcomes.find((outcome) => found.includes(outcome))).toBe(each.outcome);
});

test('the chains of the laws meet, fail and leave open as a whole, so that no law holds of nothing', () => {
  const found = new Set(chains.map(([, each]) => chainCell(each).outcome));
  expect([...found].sort()).toEqual(expect.arrayContaining(['cannot tell', 'fails', 'meets']));
});

test('negative: where nothing was judged nothing decides', () => {
  const { judgements: _, ...rest } = appraised();
  expect(chainCell({ ...rest, judgements: [] })).toEqual({
    target: 'the chain',
    outcome: 'meets',
    decides: undefined,
    judgements: [],
  });
});
