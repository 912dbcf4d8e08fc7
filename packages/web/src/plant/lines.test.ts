import { expect, test } from 'vitest';
import type { PlantView, PointRow } from '../engine/views.ts';
import { placeAfter } from './grid-keys.ts';
import { coverageOf, type Filters, linesOf, rulesAt } from './lines.ts';

const row = (machine: string, name: string, more: Partial<PointRow> = {}): PointRow => ({
  of: `${machine}/${name}`,
  machine,
  name,
  location: 'bearing housing',
  direction: 'vertical',
  installation: 'online',
  transducer: 'ACC-100',
  mount: 'stud',
  cable: 'TSP',
  cableLength: '85 m',
  input: 'ONL-24',
  said: {},
  targets: 5,
  covered: 5,
  outcome: 'meets',
  findings: 0,
  rules: [],
  margin: '3.0 dB',
  ...more,
});

const plant: PlantView = {
  name: '',
  owner: '',
  revision: '',
  date: '',
  machines: [
    { name: 'P-1', title: 'Feed pump', points: 2 },
    { name: 'F-2', title: 'Fan', points: 1 },
    { name: 'X-3', title: 'Bare', points: 0 },
  ],
  points: [
    row('P-1', 'drive-end', { covered: 3, outcome: 'fails', findings: 1, rules: ['chain/overload'] }),
    row('P-1', 'far-end', { covered: undefined, outcome: undefined }),
    row('F-2', 'fan-end', { covered: 0, outcome: 'no chain', mount: '', transducer: '' }),
  ],
  verdict: undefined,
  findings: [],
  questions: [],
  progress: { read: 3, done: 1, of: 3 },
};
const shown = (filters: Partial<Filters>) =>
  linesOf(plant, { text: '', outcome: '', rule: '', ...filters }, rulesAt(plant)).map((line) => line.key);

test('law: without a filter every machine stands there, with its points below it', () => {
  expect(shown({})).toEqual([
    'machine P-1',
    'P-1/drive-end',
    'P-1/far-end',
    'machine F-2',
    'F-2/fan-end',
    'machine X-3',
  ]);
});

test('law: a filter leaves the points that fit and their machines', () => {
  expect(shown({ rule: 'chain/overload' })).toEqual(['machine P-1', 'P-1/drive-end']);
  expect(shown({ outcome: 'no chain' })).toEqual(['machine F-2', 'F-2/fan-end']);
  expect(shown({ text: 'FEED far' })).toEqual(['machine P-1', 'P-1/far-end']);
  expect(shown({ text: 'no such word' })).toEqual([]);
});

test('law: targets covered and not covered are those of the points worked out', () => {
  const lines = linesOf(plant, { text: '', outcome: '', rule: '' }, rulesAt(plant));
  expect(coverageOf(lines)).toEqual({ points: 3, covered: 3, uncovered: 7, waiting: 1, withoutChain: 1 });
});

test('law: keys move within the table and never out of it', () => {
  const extent = { lines: 100, columns: 12, page: 20 };
  const from = { line: 95, column: 3 };
  expect(placeAfter('PageDown', false, from, extent)).toEqual({ line: 99, column: 3 });
  expect(placeAfter('PageUp', false, from, extent)).toEqual({ line: 75, column: 3 });
  expect(placeAfter('End', false, from, extent)).toEqual({ line: 95, column: 11 });
  expect(placeAfter('Home', true, from, extent)).toEqual({ line: 0, column: 0 });
  expect(placeAfter('ArrowLeft', false, { line: 0, column: 0 }, extent)).toEqual({ line: 0, column: 0 });
  expect(placeAfter('ArrowUp', false, { line: 0, column: 0 }, extent)).toEqual({ line: 0, column: 0 });
  expect(placeAfter('q', false, from, extent)).toBeUndefined();
});
