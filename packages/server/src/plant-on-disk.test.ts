import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { cappedAt, journalPath, mostSteps } from './journal-file.ts';
import { PlantFile } from './plant-on-disk.ts';
import type { Journal, PlantOnDisk, Saved, Step } from './protocol.ts';
import { type Opened, opened } from './testing/opened.ts';

const text = '\ufeffsoundpost: plant # § 20 °C\r\nversion: 1\r\ncatalogues: [generic, own.yaml, missing.yaml]\r\n';
const sha256 = (of: string): string => createHash('sha256').update(of).digest('hex');

let bench: Opened;
beforeEach(async () => {
  bench = await opened(text);
});
afterEach(() => bench.end());

const step = (label: string): Step => ({
  label,
  edits: [{ path: ['machines', 'P-301', 'points', 0], yaml: '1' }, { path: ['policy'] }],
  undo: [],
  at: '2026-11-25T10:00:00.000Z',
});
const history = (...labels: readonly string[]): Journal => ({ steps: labels.map(step), done: labels.length });
const read = async (): Promise<PlantOnDisk> => JSON.parse((await bench.askInside('GET', '/api/plant')).body);
const put = async (base: string, next: string, journal: Journal) => {
  const { status, body } = await bench.askInside('PUT', '/api/plant', { base, text: next, journal });
  return { status, answer: JSON.parse(body) as Saved & { readonly text?: string } };
};
const labels = ({ journal }: PlantOnDisk) => journal.steps.map(({ label }) => label);
const hidden = () => readdirSync(bench.folder).filter((name) => name.startsWith('.'));

test('the plant is given byte for byte, with the catalogues it names that are there', async () => {
  writeFileSync(join(bench.folder, 'own.yaml'), 'soundpost: catalogue\n');
  const plant = await read();
  expect(plant).toMatchObject({ path: bench.plant, name: 'plant.yaml', text, hash: sha256(text) });
  expect(plant.journal).toEqual({ steps: [], done: 0 });
  const generic = readFileSync(resolve(import.meta.dirname, '../../files/catalogues/generic.yaml'), 'utf8');
  expect(Object.keys(plant.catalogues)).toEqual(['generic', 'own.yaml']);
  expect(plant.catalogues.generic?.text).toBe(generic);
  expect(plant.catalogues['own.yaml']?.text).toBe('soundpost: catalogue\n');
});

test('a save stands in the file and in the history, byte for byte, and nothing else is left in the folder', async () => {
  const next = text.replace('1', '1 # changed');
  expect(await put(sha256(text), next, history('one'))).toEqual({ status: 200, answer: { hash: sha256(next) } });
  expect(readFileSync(bench.plant, 'utf8')).toBe(next);
  expect(await read()).toMatchObject({ text: next, hash: sha256(next), journal: history('one') });
  expect(readdirSync(bench.folder).sort()).toEqual(['.plant.yaml.journal.json', 'plant.yaml']);
});

test('a save made from another file is refused with the file as it is, and nothing is written', async () => {
  writeFileSync(bench.plant, 'by another program\n');
  const { status, answer } = await put(sha256(text), 'mine\n', history('one'));
  expect({ status, answer }).toEqual({
    status: 409,
    answer: { text: 'by another program\n', hash: sha256('by another program\n') },
  });
  expect(readFileSync(bench.plant, 'utf8')).toBe('by another program\n');
  expect(hidden()).toEqual([]);
});

test('a save that another program overtakes on its way to the disk is a conflict: its file stands, the history is the old one', async () => {
  await put(sha256(text), 'two\n', history('one'));
  const before = readFileSync(journalPath(bench.plant), 'utf8');
  // The clock is asked when the file was compared already and the new one is not written yet.
  const overtaken = new PlantFile(bench.plant, bench.plant, () => {
    writeFileSync(bench.plant, 'by another program\n');
    return new Date(0);
  });
  const saving = { base: sha256('two\n'), text: 'three\n', journal: history('one', 'two') };
  expect(await overtaken.save(saving)).toEqual({ text: 'by another program\n', hash: sha256('by another program\n') });
  expect(readFileSync(bench.plant, 'utf8')).toBe('by another program\n');
  expect(JSON.parse(readFileSync(journalPath(bench.plant), 'utf8')).journal).toEqual(JSON.parse(before).journal);
  expect(readdirSync(bench.folder).filter((name) => name.endsWith('.part'))).toEqual([]);
});

test('of many windows that save from one file exactly one succeeds', async () => {
  const ends = await Promise.all(
    Array.from({ length: 8 }, (_, tab) => put(sha256(text), `tab ${tab}\n`, history(`${tab}`))),
  );
  const won = ends.filter(({ status }) => status === 200);
  expect(won).toHaveLength(1);
  expect(ends.filter(({ status }) => status === 409)).toHaveLength(7);
  const plant = await read();
  expect(plant.hash).toBe(won[0]!.answer.hash);
  expect(labels(plant)).toEqual([plant.text.slice(4, 5)]);
});

test('the history alone can be saved, and survives a new server', async () => {
  const undone = { ...history('one', 'two'), done: 1 };
  expect((await bench.askInside('PUT', '/api/journal', undone)).status).toBe(200);
  expect((await read()).journal).toEqual(undone);
});

test('where the machine stopped between history and file, the step stands there as undone', async () => {
  await put(sha256(text), 'two\n', history('one'));
  await put(sha256('two\n'), 'three\n', history('one', 'two'));
  writeFileSync(bench.plant, 'two\n');
  expect((await read()).journal).toEqual({ ...history('one', 'two'), done: 1 });
});

test('a history of other bytes is put aside, not lost', async () => {
  await put(sha256(text), 'two\n', history('one'));
  const kept = readFileSync(journalPath(bench.plant), 'utf8');
  writeFileSync(bench.plant, 'by another program\n');
  expect((await read()).journal).toEqual({ steps: [], done: 0 });
  const [aside, ...more] = hidden();
  expect(more).toEqual([]);
  expect(aside).toMatch(/^\.plant\.yaml\.journal\.\d{4}-.*Z\.json$/);
  expect(readFileSync(join(bench.folder, aside!), 'utf8')).toBe(kept);
});

test.each(['not JSON', '{}', '{"soundpost":"journal","version":1,"hash":"x","journal":{"steps":[],"done":3}}', 'null'])(
  'a history that cannot be read (%s) is put aside',
  async (broken) => {
    writeFileSync(journalPath(bench.plant), broken);
    expect((await read()).journal).toEqual({ steps: [], done: 0 });
    expect(hidden().map((name) => readFileSync(join(bench.folder, name), 'utf8'))).toEqual([broken]);
  },
);

test('a history of a newer version is refused in words and left alone', async () => {
  const newer = '{"soundpost":"journal","version":2,"hash":"x"}';
  writeFileSync(journalPath(bench.plant), newer);
  const answer = await bench.askInside('GET', '/api/plant');
  expect(answer.status).toBe(422);
  expect(answer.body).toContain('A newer Soundpost wrote it.');
  expect((await put(sha256(text), 'x\n', history()).catch(() => ({ status: 422 }))).status).toBe(422);
  expect(readFileSync(journalPath(bench.plant), 'utf8')).toBe(newer);
  expect(readFileSync(bench.plant, 'utf8')).toBe(text);
});

test('the history keeps a thousand steps: the oldest go first, what can still be undone stays', async () => {
  const many = history(...Array.from({ length: mostSteps + 5 }, (_, index) => `${index}`));
  await put(sha256(text), 'two\n', many);
  const { journal } = await read();
  expect([journal.steps.length, journal.done, journal.steps[0]!.label]).toEqual([mostSteps, mostSteps, '5']);
  expect(cappedAt({ ...history('a', 'b', 'c', 'd'), done: 1 }, 2)).toEqual({ ...history('b', 'c'), done: 0 });
  expect(cappedAt({ ...history('a', 'b', 'c', 'd'), done: 3 }, 2)).toEqual({ ...history('c', 'd'), done: 1 });
});

test('what is no JSON, no save, or too large is refused in words, and the file stays', async () => {
  const inside = { cookie: await bench.cookie(), origin: `http://127.0.0.1:${bench.port}` };
  const json = { ...inside, 'content-type': 'application/json' };
  expect((await bench.ask('PUT', '/api/plant', inside, '{}')).status).toBe(415);
  expect((await bench.ask('PUT', '/api/plant', { ...inside, 'content-type': 'text/plain' }, '{}')).status).toBe(415);
  expect((await bench.ask('PUT', '/api/plant', json, '{')).status).toBe(400);
  for (const body of [
    '{}',
    'null',
    '[]',
    '{"base":"","text":"","journal":{"steps":[{}],"done":0}}',
    '{"base":"","text":1}',
  ]) {
    expect((await bench.ask('PUT', '/api/plant', json, body)).status, body).toBe(400);
  }
  const large = JSON.stringify({ base: sha256(text), text: 'x'.repeat(33 * 1024 * 1024), journal: history() });
  expect((await bench.ask('PUT', '/api/plant', json, large)).status).toBe(413);
  const torn = JSON.stringify({ base: sha256(text), text: '\ud800', journal: history() });
  expect((await bench.ask('PUT', '/api/plant', json, torn)).status).toBe(400);
  expect(readFileSync(bench.plant, 'utf8')).toBe(text);
  expect(hidden()).toEqual([]);
});

test('a plant file that is gone or is no UTF-8 is refused in words', async () => {
  writeFileSync(bench.plant, Uint8Array.of(0x66, 0xfc, 0x72));
  const answer = await bench.askInside('GET', '/api/plant');
  expect(answer.status).toBe(422);
  expect(answer.body).toContain('UTF-8');
  renameSync(bench.plant, `${bench.plant}.away`);
  const { status, body } = await bench.askInside('PUT', '/api/plant', { base: sha256(text), text, journal: history() });
  expect(status).toBe(422);
  expect(body).toContain('expected a file that exists');
  rmSync(`${bench.plant}.away`);
});
