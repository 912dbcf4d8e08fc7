import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { FindingView } from '../engine/views.ts';
import { keptFindings } from './kept-findings.ts';

const finding = (at: string, rule: string, found: string): FindingView => ({
  key: `${at}/${rule}`,
  rule,
  weight: 'warns',
  at,
  machine: at.split('/')[0],
  point: undefined,
  found,
  limit: '',
  because: '',
  remedy: [],
  asks: undefined,
  sources: '',
});

const some = [
  finding('P-1/a', 'chain/overload', 'a peak of 87 m/s²'),
  finding('P-1/b', 'chain/response', 'a peak of 3 dB'),
  finding('P-2/a', 'chain/overload', 'clipped'),
];

test('rule, machine and text each leave only their own', () => {
  expect(keptFindings(some, { rule: 'chain/overload', machine: '', text: '' })).toEqual([some[0], some[2]]);
  expect(keptFindings(some, { rule: '', machine: 'P-1', text: '' })).toEqual([some[0], some[1]]);
  expect(keptFindings(some, { rule: 'chain/overload', machine: 'P-1', text: '' })).toEqual([some[0]]);
});

test('every word of the text must be said, in any order and in any case', () => {
  expect(keptFindings(some, { rule: '', machine: '', text: 'PEAK a' })).toEqual([some[0], some[1]]);
  expect(keptFindings(some, { rule: '', machine: '', text: 'dB peak' })).toEqual([some[1]]);
  expect(keptFindings(some, { rule: '', machine: '', text: 'peak clipped' })).toEqual([]);
});

test('law: a filter never adds, never reorders, and blank text asks for all', () => {
  fc.assert(
    fc.property(fc.string(), fc.constantFrom('', 'P-1', 'P-2', 'P-3'), (text, machine) => {
      const kept = keptFindings(some, { rule: '', machine, text });
      expect(some.filter((each) => kept.includes(each))).toEqual(kept);
    }),
  );
  expect(keptFindings(some, { rule: '', machine: '', text: '  \t ' })).toEqual(some);
});
