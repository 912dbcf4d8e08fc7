import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Journal, PlantOnDisk, Saved } from './protocol.ts';
import { asked, cookieOf, pathOf } from './testing/opened.ts';

const house = resolve(import.meta.dirname, '../../..');
const folder = mkdtempSync(join(tmpdir(), 'soundpost-crash-'));
const plant = join(folder, 'plant.yaml');
const cycles = 30;

// The server runs as it is installed, in a process of its own that can be killed.
beforeAll(() => {
  const tsc = join(house, 'node_modules/typescript/bin/tsc');
  spawnSync(process.execPath, [tsc, '-b', 'packages/server'], { cwd: house });
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const program = `
  import { workbench } from ${JSON.stringify(pathToFileURL(join(house, 'packages/server/dist/index.js')).href)};
  const opened = await workbench(${JSON.stringify({ plant, port: 0, genericCatalogue: plant, page: folder })});
  process.stdout.write(opened.newAddress());
`;

interface Running {
  readonly child: ChildProcess;
  ask(method: string, path: string, body?: unknown): Promise<{ status: number; body: string }>;
}

async function started(): Promise<Running> {
  const child = spawn(process.execPath, ['--input-type=module', '--eval', program], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const address = await new Promise<string>((settle, fail) => {
    child.stdout!.once('data', (data: Buffer) => settle(data.toString()));
    child.once('exit', (code) => fail(new Error(`the server ended with ${code}`)));
  });
  const port = Number(new URL(address).port);
  const cookie = cookieOf(await asked(port, 'GET', pathOf(address), {}));
  const headers = { cookie, origin: `http://127.0.0.1:${port}`, 'content-type': 'application/json' };
  return {
    child,
    ask: (method, path, body) =>
      asked(port, method, path, headers, body === undefined ? undefined : JSON.stringify(body)),
  };
}

const padding = `# ${'as it was '.repeat(12)}\n`.repeat(400);
const textOf = (count: number): string => `saves: ${count}\n${padding}`;
const countIn = (text: string): number => Number(/^saves: (\d+)\n/.exec(text)?.[1]);
const journalOf = (count: number): Journal => ({
  steps: Array.from({ length: Math.min(count, 900) }, (_, index) => ({
    label: `${count - Math.min(count, 900) + index + 1}`,
    edits: [],
    undo: [],
    at: '2026-11-25T10:00:00.000Z',
  })),
  done: Math.min(count, 900),
});

const unfinished = (): readonly string[] => readdirSync(folder).filter((name) => name.endsWith('.part'));

test('killed in the middle of saves, thirty times: what was acknowledged is there, file and history fit', {
  timeout: 300_000,
}, async () => {
  writeFileSync(plant, textOf(0));
  let acknowledged = 0;
  let between = 0;
  let leftOver = 0;
  writeFileSync(join(folder, '.soundpost-0123456789abcdef.part'), 'of somebody else');
  for (let cycle = 0; cycle < cycles; cycle++) {
    const { child, ask } = await started();
    const found = JSON.parse((await ask('GET', '/api/plant')).body) as PlantOnDisk;
    const count = countIn(found.text);
    expect(found.text, 'a whole file').toBe(textOf(count));
    expect([acknowledged, acknowledged + 1], 'nothing acknowledged is lost').toContain(count);
    expect(Number(found.journal.steps[found.journal.done - 1]?.label ?? 0), 'the history fits').toBe(count);
    if (found.journal.done < found.journal.steps.length || count > acknowledged) between++;
    acknowledged = count;
    let hash = found.hash;
    const ended = new Promise((settle) => child.once('exit', settle));
    const kill = setTimeout(() => child.kill('SIGKILL'), 40 + ((cycle * 37) % 120));
    try {
      for (;;) {
        const next = acknowledged + 1;
        const { status, body } = await ask('PUT', '/api/plant', {
          base: hash,
          text: textOf(next),
          journal: journalOf(next),
        });
        expect(status).toBe(200);
        hash = (JSON.parse(body) as Saved).hash;
        acknowledged = next;
      }
    } catch (error) {
      if (!(error instanceof Error && 'code' in error)) throw error;
    }
    await ended;
    clearTimeout(kill);
    expect(readFileSync(plant, 'utf8')).toBe(textOf(countIn(readFileSync(plant, 'utf8'))));
    leftOver += unfinished().length - 1;
  }
  expect(acknowledged, 'saves took place').toBeGreaterThan(cycles);
  expect(between, 'some saves were cut off under way').toBeGreaterThan(0);
  expect(leftOver, 'some left an unfinished file').toBeGreaterThan(0);
  // The next start takes away what the dead ones left, and nothing of anybody else.
  const { child } = await started();
  expect(unfinished()).toEqual(['.soundpost-0123456789abcdef.part']);
  const ended = new Promise((settle) => child.once('exit', settle));
  child.kill('SIGKILL');
  await ended;
});
