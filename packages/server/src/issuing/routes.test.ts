import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Opened, opened } from '../testing/opened.ts';

const house = resolve(import.meta.dirname, '../../../..');
const plant = readFileSync(join(house, 'examples/raw-water-pump/plant.yaml'), 'utf8');
const base = createHash('sha256').update(plant).digest('hex');
let bench: Opened;

// A set is issued by a process of its own, which runs as it is built.
beforeAll(async () => {
  spawnSync(process.execPath, [join(house, 'node_modules/typescript/bin/tsc'), '-b', 'packages/server'], {
    cwd: house,
  });
  bench = await opened(plant);
}, 120_000);
afterAll(() => bench.end());

const asked = (more: object = {}) => ({
  base,
  folder: 'sent',
  revision: 'A',
  documents: ['cable-schedule'],
  forms: ['csv'],
  paper: 'a4',
  preliminary: true,
  showing: { units: 'metric', decimal: 'point' },
  ...more,
});
const post = (more: object = {}) => bench.askInside('POST', '/api/issues', asked(more));
const words = (body: string): { is: string; words?: string; name?: string; written?: boolean }[] =>
  body
    .split('\n')
    .filter((each) => each !== '')
    .map((each) => JSON.parse(each));
const last = async (more: object = {}) => words((await post(more)).body).at(-1);
const beside = () => readdirSync(bench.folder).filter((each) => each !== 'plant.yaml');

const routes: readonly (readonly [string, string])[] = [
  ['GET', '/api/issues/sent'],
  ['GET', '/api/issues/sent/revision-A/stated'],
  ['GET', '/api/issues/sent/revision-A/file/contents.json'],
  ['POST', '/api/issues'],
];

test.each(routes)('negative: %s %s without the cookie is refused, and nothing is written', async (method, path) => {
  const own = { origin: `http://127.0.0.1:${bench.port}`, 'content-type': 'application/json' };
  const body = method === 'POST' ? JSON.stringify(asked({ folder: 'stolen' })) : undefined;
  const answer = await bench.ask(method, path, own, body);
  expect(answer.status).toBe(401);
  const guess = await bench.ask(method, path, { ...own, cookie: `soundpost-${bench.port}=guess` }, body);
  expect(guess.status).toBe(401);
  expect(beside()).not.toContain('stolen');
});

test.each<[string, Record<string, string>]>([
  ['another origin', { origin: 'http://plant.example' }],
  ['no origin', {}],
  ['an origin that cannot be told', { origin: 'null' }],
])('negative: an issue asked for with %s is refused, cookie or not', async (_, origin) => {
  const headers = { cookie: await bench.cookie(), 'content-type': 'application/json', ...origin };
  const answer = await bench.ask('POST', '/api/issues', headers, JSON.stringify(asked({ folder: 'forged' })));
  expect(answer.status).toBe(403);
  expect(beside()).not.toContain('forged');
});

test.each(['..', '../sent', '/tmp', 'sent/..', 'a\\b', '.hidden', 'sent.', 'C:', 'nul\0', '~', 'x'.repeat(81)])(
  'negative: the folder %j is refused in words, looked at or written to',
  async (folder) => {
    const told = await post({ folder });
    expect(told.status).toBe(422);
    expect(told.body).toContain('a plain name of a folder beside the plant file');
    const seen = await bench.askInside('GET', `/api/issues/${encodeURIComponent(folder)}`);
    if (folder !== '..') expect(seen.status).toBeGreaterThanOrEqual(400);
    expect(seen.body).not.toContain('revisions');
  },
);

test('negative: what is not an issue is refused, and a body without end', async () => {
  for (const wrong of [{ folder: 3 }, { documents: 'all' }, { forms: [1] }, { showing: {} }, { preliminary: 'no' }]) {
    expect((await post(wrong)).status).toBe(400);
  }
  expect((await bench.askInside('POST', '/api/issues', '[')).status).toBe(400);
  const headers = {
    cookie: await bench.cookie(),
    origin: `http://127.0.0.1:${bench.port}`,
    'content-type': 'application/json',
    'content-length': String(33 * 1024 * 1024),
  };
  const big = ' '.repeat(33 * 1024 * 1024);
  expect((await bench.ask('POST', '/api/issues', headers, big)).status).toBe(413);
});

test('negative: a plant that was changed since it was looked at is not issued', async () => {
  const answer = await post({ base: 'f'.repeat(64), folder: 'stale' });
  expect(answer.status).toBe(409);
  expect(answer.body).toContain('changed since');
  expect(beside()).not.toContain('stale');
});

test('negative: an unknown document, form and paper are refused in words and write nothing', async () => {
  for (const wrong of [{ documents: ['recipe'] }, { forms: ['exe'] }, { paper: 'papyrus' }]) {
    const told = await last({ folder: 'unknown', ...wrong });
    expect(told?.is).toBe('refused');
    expect(told?.words).toContain(Object.values(wrong).flat()[0]);
  }
  expect(existsSync(join(bench.folder, 'unknown'))).toBe(false);
});

test('a set is issued, listed and given out by its contents, and stands already when asked for again', async () => {
  expect(await last()).toMatchObject({ is: 'issued', name: 'revision-A', written: true });
  const { revisions } = JSON.parse((await bench.askInside('GET', '/api/issues/sent')).body);
  expect(revisions.map((each: { name: string }) => each.name)).toEqual(['revision-A']);
  for (const { path } of revisions[0].files) {
    const { status, body, headers } = await bench.askInside('GET', `/api/issues/sent/revision-A/file/${path}`);
    expect(status).toBe(200);
    expect(body).toBe(readFileSync(join(bench.folder, 'sent/revision-A', path), 'utf8'));
    expect(headers['content-security-policy']).toContain("default-src 'none'");
  }
  const stated = JSON.parse((await bench.askInside('GET', '/api/issues/sent/revision-A/stated')).body);
  expect(stated).toMatchObject({ plant, revision: 'A' });
}, 60_000);

test('negative: a file that the contents do not list is not given out, nor one that leads out', async () => {
  const folder = join(bench.folder, 'sent/revision-A');
  writeFileSync(join(folder, 'beside.csv'), 'not issued');
  const outside = join(bench.folder, 'secret.csv');
  writeFileSync(outside, 'secret');
  for (const path of [
    'beside.csv',
    '..%2f..%2fplant.yaml',
    '%2e%2e/%2e%2e/plant.yaml',
    'tables%2f..%2f..%2f..%2fplant.yaml',
    '..%5c..%5cplant.yaml',
    'contents.json%00.csv',
    '%2fetc%2fpasswd',
  ]) {
    const { status, body } = await bench.askInside('GET', `/api/issues/sent/revision-A/file/${path}`);
    expect(status, path).toBeGreaterThanOrEqual(400);
    expect(body, path).not.toContain('soundpost: plant');
  }
  // Even a list that was tampered with does not lead out of its revision.
  const bent = join(bench.folder, 'bent/revision-X');
  mkdirSync(bent, { recursive: true });
  symlinkSync(outside, join(bent, 'link.csv'));
  const files = ['link.csv', '../../secret.csv'].map((path) => ({ path, title: path, sha256: '' }));
  const list = { soundpost: 'issue', revision: 'X', date: '', contentHash: '', preliminary: true, files };
  writeFileSync(join(bent, 'contents.json'), JSON.stringify(list));
  for (const path of ['link.csv', '..%2f..%2fsecret.csv']) {
    const { status, body } = await bench.askInside('GET', `/api/issues/bent/revision-X/file/${path}`);
    expect(status, path).toBe(404);
    expect(body).not.toContain('secret');
  }
});

test('negative: a revision that is not there, or is no name of one, is refused in words', async () => {
  for (const name of ['revision-Q', '.hidden', 'revision-..%2f..', 'revision-A%2f..%2f..', 'plant.yaml']) {
    const { status, body } = await bench.askInside('GET', `/api/issues/sent/${name}/stated`);
    expect(status, name).toBeGreaterThanOrEqual(400);
    expect(body, name).not.toContain('soundpost: plant');
    expect((await bench.askInside('GET', `/api/issues/sent/${name}/file/contents.json`)).status).toBeGreaterThanOrEqual(
      400,
    );
  }
});

test('of two issues at once one is made and the other told to wait; after it the next is made', async () => {
  const both = await Promise.all([post({ folder: 'twice' }), post({ folder: 'twice', revision: 'B' })]);
  const statuses = both.map((each) => each.status).sort();
  expect(statuses).toEqual([200, 409]);
  expect(both.find((each) => each.status === 409)!.body).toContain('being issued here already');
  expect(words(both.find((each) => each.status === 200)!.body).at(-1)?.is).toBe('issued');
  expect(readdirSync(join(bench.folder, 'twice'))).toHaveLength(1);
  expect((await last({ folder: 'twice', revision: 'C' }))?.is).toBe('issued');
}, 60_000);
