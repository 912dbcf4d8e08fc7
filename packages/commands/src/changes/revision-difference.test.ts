import { expect, test } from 'vitest';
import type { StatedTexts } from '../plant/stated-texts.ts';
import { fileOf, pump } from '../testing/house.ts';
import { grouped, revisionDifference } from './revision-difference.ts';

const catalogue = fileOf('packages/files/catalogues/generic.yaml');

function texts(plant: string, generic = catalogue): StatedTexts {
  return { from: 'plant.yaml', plant, catalogues: new Map([['generic', generic]]) };
}

const old = texts(pump());
const places = (list: readonly { readonly path: readonly (string | number)[] }[]) =>
  list.map((each) => each.path.join('/'));
const sorts = (list: readonly { readonly sort: string; readonly at: string }[], at: string) =>
  new Set(list.filter((each) => each.at === at).map((each) => each.sort));

test('law: no change gives an empty difference', () => {
  const { stated, design, sheets, causes } = revisionDifference(old, texts(`${pump()}\n# a remark\n`));
  expect(stated).toEqual([]);
  expect(design).toEqual({ changes: [], unproven: [], proven: [], withdrawn: [], testsToRepeat: [] });
  expect([...sheets, ...causes]).toEqual([]);
});

test('a range that changes moves alarm and scaling of every point behind it, and they are led back to it', () => {
  const [head, tail] = catalogue.split('LPV-25:');
  const generic = `${head}LPV-25:${tail!.replace(/range: [^\n]+/, 'range: 50 mm/s rms 10-1000 Hz')}`;
  const { stated, design, causes } = revisionDifference(old, texts(pump(), generic));
  expect(places(stated).every((each) => each.includes('LPV-25'))).toBe(true);
  expect(stated.every((each) => each.catalogue === 'generic')).toBe(true);
  const moved = design.changes.filter((each) => ['chain', 'scaling'].includes(each.sort));
  expect(sorts(moved, 'P-301/pump-drive-end-loop')).toEqual(new Set(['chain', 'scaling']));
  for (const { key } of design.changes) expect(causes.get(key)?.changes).toContain(0);
  expect(design.testsToRepeat.map((each) => each.at)).toEqual(['P-301/pump-drive-end-loop']);
});

const single: readonly (readonly [string, string, string, string])[] = [
  ['value: 85 m', 'value: 86 m', 'pump-drive-end-loop/chain/cable-length/value', 'chain'],
  ['delay: 3 s', 'delay: 5 s', 'pump-drive-end-loop/alarm/delay', 'alarm'],
  ['value: 1.9 mm/s rms', 'value: 1.8 mm/s rms', 'pump-drive-end-loop/alarm/baseline/value', 'scaling'],
  ['mount: stud', 'mount: magnet-2pole', 'pump-drive-end-horizontal/chain/mount', 'chain'],
];

test.each(single)(
  'law: the single edit of %s to %s is named, and is the cause of all that follows',
  (from, to, place, sort) => {
    const after = texts(pump({ [from]: to }));
    const { stated, design, sheets, causes } = revisionDifference(old, after);
    expect(places(stated)).toEqual([`machines/P-301/points/${place}`]);
    const at = `P-301/${place.split('/')[0]}`;
    expect(sorts(design.changes, at)).toContain(sort);
    expect(design.testsToRepeat.map((each) => each.at)).toEqual([at]);
    expect(sheets.map((each) => each.document)).toContain('commissioning-tests');
    for (const cause of causes.values()) expect(cause).toEqual({ changes: [0], acting: 'alone' });
  },
);

test('law: the difference the other way round has before and after exchanged', () => {
  const after = texts(pump({ 'mount: stud': 'mount: magnet-2pole', 'delay: 3 s': 'delay: 5 s' }));
  const [there, back] = [revisionDifference(old, after), revisionDifference(after, old)];
  const byKey = (changes: typeof there.design.changes) => [...changes].sort((a, b) => (a.key < b.key ? -1 : 1));
  const exchanged = back.design.changes.map(({ before, after: is, ...rest }) => ({
    ...rest,
    ...(is === undefined ? {} : { before: is }),
    ...(before === undefined ? {} : { after: before }),
  }));
  expect(there.design.changes.length).toBeGreaterThan(5);
  expect(byKey(exchanged)).toEqual(byKey(there.design.changes));
  const named = (list: typeof there.design.unproven) => list.map(({ at, target }) => `${at} ${target}`);
  expect(there.design.unproven.length).toBeGreaterThan(0);
  expect(named(back.design.proven)).toEqual(named(there.design.unproven));
});

test('two edits of two points are not mixed up: each has what follows from it', () => {
  const after = texts(pump({ 'value: 85 m': 'value: 86 m', 'mount: stud': 'mount: magnet-2pole' }));
  const { stated, design, causes } = revisionDifference(old, after);
  const place = (word: string) => places(stated).findIndex((each) => each.endsWith(word));
  for (const { key, at } of design.changes) {
    const own = at.startsWith('P-301/pump-drive-end-loop') ? place('cable-length/value') : place('mount');
    expect(causes.get(key)?.changes, key).toEqual([own]);
  }
});

test('a choice that cannot be read without its catalogue is still found as the cause, by taking it back alone', () => {
  const [, sheet] = /\n( {2}LPV-25:\n(?: {4}.*\n)+)/.exec(catalogue)!;
  const head = catalogue.slice(0, catalogue.indexOf('\n', catalogue.indexOf('version:')) + 1);
  const more = `${head}title: More parts\ntransducers:\n${sheet!.replace('LPV-25', 'LPV-26').replace(/range: [^\n]+/, 'range: 50 mm/s rms 10-1000 Hz')}`;
  const plant = pump({
    'catalogues: [generic]': 'catalogues: [generic, more.yaml]',
    'transducer: LPV-25': 'transducer: LPV-26',
  });
  const after: StatedTexts = {
    ...texts(plant),
    catalogues: new Map([
      ['generic', catalogue],
      ['more.yaml', more],
    ]),
  };
  const { notAlone, stated, design, causes } = revisionDifference(old, after);
  const chosen = places(stated).findIndex((each) => each.endsWith('transducer'));
  expect(notAlone).toEqual([chosen]);
  const part = design.changes.find((each) => each.sort === 'chain' && each.name === 'transducer')!;
  expect(causes.get(part.key)).toEqual({ changes: [chosen], acting: 'together' });
});

test('law: however many changes there are, no more than so many are tried, and none is lost', () => {
  const changes = Array.from({ length: 500 }, (_, at) => ({
    path: ['machines', `M-${at % 7}`, 'points', `p-${at}`, 'alarm'],
    edit: { path: [] },
    undoing: { path: [] },
  }));
  const groups = grouped(changes, 60);
  expect(groups.length).toBeLessThanOrEqual(60);
  expect(groups.flatMap((each) => each.places).sort((a, b) => a - b)).toEqual(changes.map((_, at) => at));
  expect(grouped(changes.slice(0, 60), 60)).toHaveLength(60);
});
