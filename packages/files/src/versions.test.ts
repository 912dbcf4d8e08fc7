import { Broken } from '@soundpost/core';
import { expect, test } from 'vitest';
import { entryOf, type PlacedMap } from './placed.ts';
import { readYaml } from './read-yaml.ts';
import { type Reader, text } from './reader.ts';
import { record } from './record.ts';
import { bytesOf, refused } from './refused.ts';
import { versionReader } from './version.ts';
import { type Version, type Versions, versioned, versionedFiles, versions } from './versions.ts';

/**
 * For each format and each version with a way forward: a file of the version before, and what the reader makes of it.
 * A version that is added without a row here fails the test below.
 */
const exercised: Readonly<
  Record<string, Readonly<Record<number, { readonly before: string; readonly read: unknown }>>>
> = { plant: {}, catalogue: {}, records: {}, store: {} };

/** What of the formats is not exercised by the table. */
function unexercised(of: readonly Versions[], table: typeof exercised): readonly string[] {
  return of.flatMap(({ file, list }) =>
    list
      .filter(({ version, forward }) => forward !== undefined && table[file]?.[version] === undefined)
      .map(({ version }) => `${file} ${version}`),
  );
}

test('law: every migration is exercised', () => {
  expect(unexercised(versionedFiles, exercised)).toEqual([]);
  expect(Object.keys(exercised).sort()).toEqual(versionedFiles.map(({ file }) => file).sort());
});

test('negative: a migration that no test exercises is found', () => {
  expect(unexercised([shelfVersions], { shelf: { 2: { before: '', read: {} } } })).toEqual(['shelf 3']);
});

/** A key under another name; the value and its place stay. */
const renamed =
  (from: string, to: string) =>
  (file: PlacedMap): PlacedMap => ({
    ...file,
    entries: file.entries.map((each) => (each.key === from ? { ...each, key: to } : each)),
  });

/** An invented format of three versions, to try the way forward on. */
const shelfVersions = versions('shelf', [
  { version: 1, what: 'The first format.' },
  { version: 2, what: "'name' is 'title'.", forward: renamed('name', 'title') },
  { version: 3, what: "'place' is 'location'.", forward: renamed('place', 'location') },
]);

const shelf: Reader<{ readonly title: string; readonly location: string }> = versioned(
  shelfVersions,
  record('a shelf', {
    version: versionReader(shelfVersions.newest),
    title: text('What it is'),
    location: text('Where it stands'),
  }),
);

const read = (file: string) => readYaml(bytesOf(file), 'shelf.yaml', shelf).value;

test('a file of each version reads the same', () => {
  const meant = { version: 3, title: 'Mounts', location: 'store' };
  expect(read('version: 1\nname: Mounts\nplace: store')).toEqual(meant);
  expect(read('version: 2\ntitle: Mounts\nplace: store')).toEqual(meant);
  expect(read('version: 3\ntitle: Mounts\nlocation: store')).toEqual(meant);
});

test('what is wrong in an old file is refused where it stands there', () => {
  const { refusals } = refused(() => read('version: 1\nname: Mounts\nplace:'));
  expect(refusals).toMatchObject([{ line: 3, column: 7, expected: 'a text of at most 2000 characters' }]);
  expect(refused(() => read('version: 1\ntitle: Mounts\nname: x\nplace: store')).refusals).toMatchObject([
    { line: 3, column: 1, read: 'title', expected: 'the keys of version 1 in a file of version 1' },
  ]);
});

test('negative: a newer file is refused in one sentence, whatever else it holds; no version and odd ones are refused', () => {
  const { refusals, message } = refused(() => read('version: 4\nheadline: Mounts\nshelves: [a, b]'));
  expect(refusals).toMatchObject([{ line: 1, column: 10, read: '4' }]);
  expect(message).toContain('a version up to 3, the newest this program reads of a shelf file');
  expect(message).toContain('nothing was changed');
  for (const version of ['0', '-1', '1.5', 'x', '', '1e0', '99999999999', '[1]']) {
    expect(refused(() => read(`version: ${version}\ntitle: a\nlocation: b`)).refusals.length, version).toBeGreaterThan(
      0,
    );
  }
  expect(refused(() => read('title: a\nlocation: b')).refusals[0]).toMatchObject({ read: '' });
});

test('a way forward changes only its copy: the file as it was read stays', () => {
  const seen: PlacedMap[] = [];
  const watching = versions('shelf', [
    { version: 1, what: '' },
    {
      version: 2,
      what: '',
      forward: (file) => {
        seen.push(file);
        return renamed('name', 'title')(file);
      },
    },
  ]);
  const reader = versioned(watching, record('a shelf', { version: versionReader(2), title: text('What it is') }));
  readYaml(bytesOf('version: 1\nname: Mounts'), 'shelf.yaml', reader);
  expect(entryOf(seen[0]!, 'version')?.value).toMatchObject({ source: '1' });
  expect(entryOf(seen[0]!, 'name')?.value).toMatchObject({ source: 'Mounts' });
});

test('negative: a list with a gap, or with a version nobody can reach, is our own mistake', () => {
  const first: Version = { version: 1, what: '' };
  const forward = (file: PlacedMap) => file;
  expect(() => versions('x', [first, { version: 3, what: '', forward }])).toThrow(Broken);
  expect(() => versions('x', [first, { version: 2, what: '' }])).toThrow(Broken);
  expect(() => versions('x', [{ version: 1, what: '', forward }])).toThrow(Broken);
});
