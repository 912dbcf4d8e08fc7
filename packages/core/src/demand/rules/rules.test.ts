import { expect, test } from 'vitest';
import { wording } from '../../finding/finding.ts';
import { showMeasure } from '../../finding/measure.ts';
import { exampleLimits, examplePoint } from './example.ts';
import { demandRules, limitDoubts, pointDoubts } from './rules.ts';

test('law: every rule has a statement that passes it and one that does not, and asks its question', () => {
  expect(new Set(demandRules.map(({ id }) => id)).size).toBe(demandRules.length);
  for (const rule of demandRules) {
    expect(rule.check(rule.valid), rule.id).toEqual([]);
    const found = rule.check(rule.invalid);
    expect(found.length, rule.id).toBeGreaterThan(0);
    for (const each of found) {
      expect(each.rule).toBe(rule.id);
      expect(each.weight, rule.id).toBe('question');
      expect(showMeasure(each.asks ?? ''), rule.id).toMatch(/\?$/);
      expect(each.remedy.length, rule.id).toBeGreaterThan(0);
    }
    expect(rule.sources.length, rule.id).toBeGreaterThan(0);
  }
});

const asked = (changes: Parameters<typeof examplePoint>[0]) => pointDoubts(examplePoint(changes));
const words = (changes: Parameters<typeof examplePoint>[0]) => asked(changes).map((each) => wording(each));

test('negative: g typed for m/s², in/s for mm/s; a prefix is no other unit', () => {
  expect(words({ observe: 'burst', smallest: '0.1 g peak', largest: '5 m/s2 peak' })).toEqual([
    expect.stringContaining("Is '5 m/s2 peak' in m/s2 on purpose, beside '0.1 g peak'?"),
  ]);
  expect(words({ largest: '1 in/s rms' })).toEqual([expect.stringContaining('one may be 25.4 times off')]);
  expect(words({ smallest: '100 um/s rms', largest: '0.01 m/s rms' })).toEqual([]);
});

test('negative: peak beside rms; a derived peak is rms in other words', () => {
  expect(words({ largest: '10 mm/s peak' })).toEqual([expect.stringContaining('7.071 mm/s rms')]);
  expect(words({ largest: '10 mm/s derived peak' })).toEqual([]);
});

test('negative: levels exchanged, also across detectors; equal levels are not in order', () => {
  expect(asked({ smallest: '10 mm/s rms', largest: '0.1 mm/s rms' }).map(({ rule }) => rule)).toEqual([
    'demand/levels-in-order',
  ]);
  expect(asked({ smallest: '1 mm/s rms', largest: '1 mm/s rms' })).toHaveLength(1);
  // 1.3 mm/s peak is 0.92 mm/s rms of a sine.
  expect(asked({ smallest: '1 mm/s rms', largest: '1.3 mm/s peak' }).map(({ rule }) => rule)).toEqual([
    'demand/levels-in-order',
    'demand/one-detector',
  ]);
});

test('negative: a spacing of a third of the line frequency is the widest', () => {
  expect(words({ resolution: '8.3 Hz' })).toEqual([]);
  expect(words({ resolution: '8.4 Hz' })).toHaveLength(1);
  expect(words({ resolution: '0 Hz' })).toHaveLength(1);
});

test('negative: a side without a view is asked for; a word that contains one is none', () => {
  for (const direction of ['left', 'Right of the shaft', "3 o'clock", '45 deg clockwise']) {
    expect(asked({ direction }).map(({ rule }) => rule)).toEqual(['demand/view-direction']);
  }
  for (const direction of ['left, seen from the driver', 'right looking from the motor', 'upright', 'vertical']) {
    expect(asked({ direction })).toEqual([]);
  }
});

test('negative: limits in in/s, in another band, without a band, exchanged', () => {
  const rules = (aB: string, bC: string, cD: string) =>
    limitDoubts(exampleLimits(aB, bC, cD)).map(({ rule, asks }) => `${rule}: ${asks}`);
  const band = 'rms 2-1000 Hz';
  expect(rules(`3.2 mm/s ${band}`, `5.1 mm/s ${band}`, `8.5 mm/s ${band}`)).toEqual([]);
  expect(rules(`3.2 in/s ${band}`, `5.1 in/s ${band}`, `8.5 in/s ${band}`)).toEqual([
    `demand/boundaries-usual: Was '3.2 mm/s ${band}' meant?`,
    `demand/boundaries-usual: Was '5.1 mm/s ${band}' meant?`,
    `demand/boundaries-usual: Was '8.5 mm/s ${band}' meant?`,
  ]);
  expect(rules(`3.2 mm/s ${band}`, '5.1 mm/s rms', `8.5 mm/s ${band}`)).toEqual([
    'demand/boundaries-alike: In which band does the specification limit the rms value?',
  ]);
  expect(rules(`3.2 mm/s ${band}`, '5.1 mm/s rms 10-1000 Hz', `8.5 mm/s ${band}`)).toHaveLength(1);
  expect(rules('80 um pp', '150 um pp', '220 um pp')).toEqual([]);
});
