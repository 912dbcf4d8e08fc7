import { expect, test } from 'vitest';
import { issue } from './issue.ts';
import { done, flowing, pump, pumpPath, text, world } from './testing/house.ts';

const given = { plant: pumpPath, out: 'out', preliminary: false };
const textIn = (surroundings: ReturnType<typeof world>, path: string) =>
  new TextDecoder().decode(surroundings.files.get(path));

test('a plant is issued into a folder of its revision, its contents written last', async () => {
  const surroundings = world();
  const outcome = await done(issue, { ...given, documents: ['instrument-list'] }, surroundings);
  expect(outcome.exit).toBe(0);
  const written = [...surroundings.files.keys()].filter((path) => path.startsWith('out/'));
  expect(written.at(-1)).toBe('out/revision-A/contents.json');
  expect(written).toContain('out/revision-A/instrument-list.pdf');
  const contents = JSON.parse(textIn(surroundings, 'out/revision-A/contents.json'));
  expect(contents.files.map((each: { path: string }) => `out/revision-A/${each.path}`)).toEqual(written.slice(0, -1));
  expect(contents.contentHash).toMatch(/^[0-9a-f]{64}$/);
  expect(textIn(surroundings, 'out/revision-A/documents.html')).toContain(contents.contentHash);
  const documents = written.filter((path) => path.includes('instrument-list'));
  expect(surroundings.steps.length).toBeGreaterThan(documents.length);
  expect(written).toContain('out/revision-A/design.json');
  expect(textIn(surroundings, `out/revision-A/${contents.stated.plant}`)).toBe(pump());
});

test('law: the same plant gives the same files twice, and a catalogue that changes changes the hash', async () => {
  const filesOf = async (files: Readonly<Record<string, string>> = {}) => {
    const surroundings = world(files);
    await done(issue, { ...given, documents: ['instrument-list'] }, surroundings);
    return textIn(surroundings, 'out/revision-A/contents.json');
  };
  expect(await filesOf()).toBe(await filesOf());
  const changed = {
    'house/packages/files/catalogues/generic.yaml': `${textIn(world(), 'house/packages/files/catalogues/generic.yaml')}\n# changed\n`,
  };
  expect(JSON.parse(await filesOf(changed)).contentHash).not.toBe(JSON.parse(await filesOf()).contentHash);
});

const blocked = { [pumpPath]: pump({ 'value: 85 m': 'value: 2850 m' }) };

test('nothing is issued while a finding blocks; as preliminary every document says so', async () => {
  const surroundings = world(blocked);
  const refused = await done(issue, given, surroundings);
  expect(refused.exit).toBe(1);
  expect(text(refused)).toContain('Nothing is issued');
  expect([...surroundings.files.keys()].some((path) => path.startsWith('out/'))).toBe(false);
  const outcome = await done(issue, { ...given, preliminary: true, documents: ['instrument-list'] }, surroundings);
  expect(outcome.exit).toBe(1);
  expect(textIn(surroundings, 'out/revision-A/documents.html')).toContain('PRELIMINARY');
});

test('what is issued stays as it is: another content wants another revision', async () => {
  const surroundings = world();
  await done(issue, { ...given, documents: ['instrument-list'] }, surroundings);
  surroundings.files.set(pumpPath, new TextEncoder().encode(pump({ 'value: 85 m': 'value: 86 m' })));
  const again = await done(issue, { ...given, documents: ['instrument-list'] }, surroundings);
  expect(again.exit).toBe(2);
  expect(text(again)).toContain('--revision');
  const next = await done(issue, { ...given, revision: 'B', documents: ['instrument-list'] }, surroundings);
  expect(next.exit).toBe(0);
  expect(surroundings.files.has('out/revision-B/contents.json')).toBe(true);
});

test('issued again from the same content, a revision is left as it stands; with other documents it is refused', async () => {
  const surroundings = world();
  await done(issue, { ...given, documents: ['instrument-list'] }, surroundings);
  const before = new Map(surroundings.files);
  const again = await done(issue, { ...given, documents: ['instrument-list'] }, surroundings);
  expect(again.exit).toBe(0);
  expect(again.json).toMatchObject({ issued: true, written: false });
  const others = await done(issue, { ...given, documents: ['cable-schedule'] }, surroundings);
  expect(others.exit).toBe(2);
  expect(flowing(others)).toContain('issued before with other documents');
  expect(surroundings.files).toEqual(before);
});

test('negative: a document nobody knows is refused with the one probably meant', async () => {
  const outcome = await done(issue, { ...given, documents: ['instrument-lst'] });
  expect(outcome.exit).toBe(2);
  expect(flowing(outcome)).toContain("Did you mean 'instrument-list'?");
});

test('negative: a plant without a revision is asked for one', async () => {
  const surroundings = world({ [pumpPath]: pump({ '  revision: A\n': '' }) });
  const outcome = await done(issue, given, surroundings);
  expect(outcome.exit).toBe(2);
  expect(text(outcome)).toContain('--revision');
});
