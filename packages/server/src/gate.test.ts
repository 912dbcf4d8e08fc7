import { mkdirSync, writeFileSync } from 'node:fs';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { asked, cookieOf, type Opened, opened, pathOf } from './testing/opened.ts';

let bench: Opened;
beforeAll(async () => {
  bench = await opened('soundpost: plant\nversion: 1\n');
});
afterAll(() => bench.end());

test('an address opens the workbench once, and the cookie it gives is kept from scripts and other sites', async () => {
  const address = bench.newAddress();
  expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/enter\?token=[\w-]{43}$/);
  const entered = await bench.ask('GET', pathOf(address));
  expect(entered).toMatchObject({ status: 303, headers: { location: '/' } });
  expect(entered.headers['set-cookie']?.[0]).toMatch(/^soundpost-\d+=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict$/);
  const again = await bench.ask('GET', pathOf(address));
  expect(again.status).toBe(403);
  expect(again.headers['set-cookie']).toBeUndefined();
  expect(again.body).toContain('Press Enter in the terminal');
  expect((await bench.ask('GET', '/', { cookie: cookieOf(entered) })).status).toBe(200);
});

test('a new address makes the one before it useless; a look ahead uses none up; a made-up token opens nothing', async () => {
  const first = bench.newAddress();
  const second = bench.newAddress();
  expect((await bench.ask('GET', pathOf(first))).status).toBe(403);
  expect((await bench.ask('GET', '/enter?token=')).status).toBe(403);
  expect((await bench.ask('GET', '/enter')).status).toBe(403);
  expect((await bench.ask('HEAD', pathOf(second))).status).toBe(403);
  expect((await bench.ask('GET', pathOf(second))).status).toBe(303);
});

test.each(['/', '/points/P-301', '/assets/index.js', '/api/plant', '/api/changes', '/nothing.txt'])(
  'without the cookie %s is refused in words',
  async (path) => {
    const answer = await bench.ask('GET', path);
    expect(answer.status).toBe(401);
    expect(answer.body).toContain('soundpost serve printed');
    expect((await bench.ask('GET', path, { cookie: `soundpost-${bench.port}=guess` })).status).toBe(401);
  },
);

test('a save without the cookie is refused', async () => {
  const headers = { origin: `http://127.0.0.1:${bench.port}`, 'content-type': 'application/json' };
  expect((await bench.ask('PUT', '/api/plant', headers, '{}')).status).toBe(401);
});

test.each<[string, Record<string, string>]>([
  ['another host', { host: 'plant.example' }],
  ['another port', { host: '127.0.0.1:1' }],
  ['no port', { host: '127.0.0.1' }],
  ['another site', { 'sec-fetch-site': 'cross-site' }],
  ['another port of this machine', { 'sec-fetch-site': 'same-site' }],
  ['another origin', { origin: 'http://plant.example' }],
  ['no origin that can be told', { origin: 'null' }],
])('a request that names %s is refused, cookie or not', async (_, headers) => {
  const cookie = await bench.cookie();
  expect((await bench.ask('GET', '/api/plant', { cookie, ...headers })).status).toBe(403);
  expect((await bench.ask('GET', pathOf(bench.newAddress()), headers)).status).toBe(403);
});

test('the machine may be called localhost, and a page of that name writes as its own origin only', async () => {
  const cookie = await bench.cookie();
  const host = `localhost:${bench.port}`;
  const put = (headers: Record<string, string>) =>
    bench.ask(
      'PUT',
      '/api/journal',
      { cookie, 'content-type': 'application/json', ...headers },
      '{"steps":[],"done":0}',
    );
  expect((await bench.ask('GET', '/api/plant', { cookie, host })).status).toBe(200);
  expect((await put({ host, origin: `http://${host}` })).status).toBe(200);
  expect((await put({ host, origin: `http://127.0.0.1:${bench.port}` })).status).toBe(403);
  expect((await put({ host })).status).toBe(403);
});

test('every answer, refusals too, carries the strict policy', async () => {
  const cookie = await bench.cookie();
  const answers = [
    await bench.ask('GET', '/', { cookie }),
    await bench.ask('GET', '/api/plant', { cookie }),
    await bench.ask('GET', '/'),
    await bench.ask('GET', '/', { host: 'plant.example' }),
    await bench.ask('PUT', '/api/plant', { cookie, origin: `http://127.0.0.1:${bench.port}` }, 'x'),
  ];
  expect(answers.map(({ status }) => status)).toEqual([200, 200, 401, 403, 415]);
  for (const { headers } of answers) {
    const policy = String(headers['content-security-policy']).split('; ');
    expect(policy).toEqual(
      expect.arrayContaining(["default-src 'none'", "script-src 'self'", "frame-ancestors 'none'"]),
    );
    expect(policy.filter((each) => each.includes('unsafe'))).toEqual(["style-src-attr 'unsafe-inline'"]);
    expect(headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
      'cache-control': 'no-store',
    });
    expect(headers['permissions-policy']).toContain('camera=()');
    expect(headers['access-control-allow-origin']).toBeUndefined();
  }
});

test('it listens on the address of this machine alone', async () => {
  const others = Object.values(networkInterfaces())
    .flatMap((all) => all ?? [])
    .filter(({ family, internal }) => family === 'IPv4' && !internal);
  for (const { address } of others) {
    await expect(fetch(`http://${address}:${bench.port}/`)).rejects.toThrow();
  }
  await expect(fetch(`http://127.0.0.2:${bench.port}/`)).rejects.toThrow();
});

test('the page: every address without a file name is the page itself, assets may be kept, nothing else leaks', async () => {
  const cookie = await bench.cookie();
  const get = (path: string) => asked(bench.port, 'GET', path, { cookie });
  for (const path of ['/', '/points/P-301/pump', '/sheet?of=1']) {
    expect(await get(path)).toMatchObject({ status: 200, body: expect.stringContaining('<title>page') });
  }
  mkdirSync(join(bench.page, 'assets'));
  writeFileSync(join(bench.page, 'assets/index-1a.js'), 'export {};');
  const asset = await get('/assets/index-1a.js');
  expect(asset).toMatchObject({ status: 200, body: 'export {};' });
  expect(asset.headers).toMatchObject({
    'content-type': 'text/javascript; charset=utf-8',
    'cache-control': 'private, max-age=31536000, immutable',
  });
  const missing = ['/assets/gone.js', '/plant.yaml', '/.plant.yaml.journal.json', '/../plant.yaml', '/%2e%2e/x.json'];
  for (const path of [...missing, '/assets/..%2f..%2fx.json', '/assets/%00.js', '/api/nothing']) {
    expect((await get(path)).status, path).toBe(404);
  }
  expect((await bench.askInside('POST', '/')).status).toBe(405);
});
