import { createHash } from 'node:crypto';
import { renameSync, writeFileSync } from 'node:fs';
import { get, type IncomingMessage } from 'node:http';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type Opened, opened } from './testing/opened.ts';

const sha256 = (of: string): string => createHash('sha256').update(of).digest('hex');
const first = 'version: 1\n';

let bench: Opened;
const heard: IncomingMessage[] = [];
beforeEach(async () => {
  bench = await opened(first);
});
afterEach(async () => {
  for (const each of heard.splice(0)) each.destroy();
  await bench.end();
});

/** Events as a page hears them: name and hash. */
async function listening(
  headers: Readonly<Record<string, string>> = {},
): Promise<{ events: string[]; stream: IncomingMessage }> {
  const cookie = await bench.cookie();
  const options = {
    host: '127.0.0.1',
    port: bench.port,
    path: '/api/changes',
    headers: { cookie, ...headers },
    agent: false,
  };
  const stream = await new Promise<IncomingMessage>((settle, fail) => get(options, settle).on('error', fail));
  heard.push(stream);
  expect(stream.headers['content-type']).toContain('text/event-stream');
  const events: string[] = [];
  let rest = '';
  stream.setEncoding('utf8').on('data', (part: string) => {
    const whole = (rest + part).split('\n\n');
    rest = whole.pop()!;
    for (const each of whole) {
      const match = /event: (\w+)\ndata: (.*)/.exec(each);
      if (match !== null) events.push(`${match[1]} ${JSON.parse(match[2]!).hash}`);
    }
  });
  stream.on('error', () => {});
  await vi.waitFor(() => expect(events).toHaveLength(1));
  return { events, stream };
}

const save = (base: string, text: string) =>
  bench.askInside('PUT', '/api/plant', { base: sha256(base), text, journal: { steps: [], done: 0 } });

test('every window hears when another program writes the file, in whichever way it does', async () => {
  const one = await listening();
  const other = await listening();
  expect(one.events).toEqual([`current ${sha256(first)}`]);
  writeFileSync(bench.plant, 'in place\n');
  await vi.waitFor(() => expect(one.events.at(-1)).toBe(`changed ${sha256('in place\n')}`), 5000);
  writeFileSync(`${bench.plant}.new`, 'by another name\n');
  renameSync(`${bench.plant}.new`, bench.plant);
  await vi.waitFor(() => expect(other.events.at(-1)).toBe(`changed ${sha256('by another name\n')}`), 5000);
  expect(other.events.filter((each) => each.startsWith('changed'))).toHaveLength(2);
});

test('a save from here is no change by another program; other windows hear of it as what it is', async () => {
  const { events } = await listening();
  expect((await save(first, 'two\n')).status).toBe(200);
  expect((await save('two\n', 'three\n')).status).toBe(200);
  writeFileSync(`${bench.plant}.beside`, 'nothing of the plant');
  writeFileSync(bench.plant, 'four\n');
  await vi.waitFor(() => expect(events.at(-1)).toBe(`changed ${sha256('four\n')}`), 5000);
  expect(events.slice(1)).toEqual([
    `saved ${sha256('two\n')}`,
    `saved ${sha256('three\n')}`,
    `changed ${sha256('four\n')}`,
  ]);
});

test('a window that comes back hears what it missed', async () => {
  expect((await listening({ 'last-event-id': sha256(first) })).events).toEqual([`current ${sha256(first)}`]);
  expect((await listening({ 'last-event-id': sha256('old\n') })).events).toEqual([`changed ${sha256(first)}`]);
});

test('the server ends although windows listen, and they are told', async () => {
  const { stream } = await listening();
  const ended = new Promise((settle) => stream.on('end', settle).on('close', settle));
  const started = performance.now();
  await bench.end();
  await ended;
  expect(performance.now() - started).toBeLessThan(2000);
  bench = await opened(first);
});
