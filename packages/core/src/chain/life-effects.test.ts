import { expect, test } from 'vitest';
import { changed, parts, transducer } from '../../../../evidence/bench.ts';
import { measuringChain } from './chain.ts';
import { feared, lifeEffects, showLife } from './life-effects.ts';

const sealed = (sealing: string) => measuringChain(parts({ transducer: changed(transducer('ACC-100'), { sealing }) }));

test('practice, no source: a mated connector in the wet lasts 3 to 18 months, and it is said that there is no source', () => {
  const found = feared(sealed('IP67 (mated)'), 'washed down');
  expect(found.map(({ name }) => name)).toEqual(['mated-connector-in-the-wet']);
  expect(showLife(found[0]!)).toBe('3 to 18 months (common practice, no source)');
});

test('negative: not where it is dry, not for a moulded or hermetic body; no range is made up where none is known', () => {
  expect(feared(sealed('IP67 (mated)'), 'dry')).toEqual([]);
  expect(feared(sealed('IP67 (mated)'), undefined)).toEqual([]);
  expect(feared(sealed('IP68 moulded cable'), 'immersed')).toEqual([]);
  expect(feared(sealed('hermetic'), 'immersed')).toEqual([]);
  expect(feared(sealed('unknown'), 'immersed')).toEqual([]);
  expect(feared(sealed('IP67'), 'immersed').map(showLife)).toEqual(['no range is known (common practice, no source)']);
});

test('every effect is a range with low below high, or none, and names its source', () => {
  for (const { name, life, sources } of lifeEffects) {
    if (life !== undefined) expect(life.low, name).toBeLessThan(life.high);
    expect(sources.length, name).toBeGreaterThan(0);
  }
});
