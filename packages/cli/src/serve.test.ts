import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../../..');
const folder = mkdtempSync(join(tmpdir(), 'soundpost-serve-'));
const plant = join(folder, 'plant.yaml');

// The command is tested as it is installed, so it is built first.
beforeAll(() => {
  spawnSync(process.execPath, [join(root, 'node_modules/typescript/bin/tsc'), '-b'], { cwd: root });
  writeFileSync(plant, 'soundpost: plant\nversion: 1\n');
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>page</title>');
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function served(page: string): { child: ChildProcess; lines: string[]; ended: Promise<number | null> } {
  const source = pathToFileURL(join(root, 'packages/cli/dist/open-workbench.js')).href;
  const wanted = { plant, port: 0, genericCatalogue: plant, page };
  const program = `import { openWorkbench } from '${source}'; await openWorkbench(${JSON.stringify(wanted)}); console.log('ended');`;
  const child = spawn(process.execPath, ['--input-type=module', '--eval', program]);
  const lines: string[] = [];
  child.stdout!.on('data', (text: Buffer) =>
    lines.push(
      ...text
        .toString()
        .split('\n')
        .filter((line) => line !== ''),
    ),
  );
  child.stderr!.on('data', (text: Buffer) => lines.push(text.toString()));
  return { child, lines, ended: new Promise((settle) => child.once('exit', settle)) };
}

async function until(true_: () => boolean): Promise<void> {
  for (let tries = 0; !true_(); tries++) {
    if (tries > 400) throw new Error('it did not come');
    await new Promise((settle) => setTimeout(settle, 25));
  }
}

const entered = async (address: string | undefined) => (await fetch(`${address}`, { redirect: 'manual' })).status;

test('one line with an address; Enter prints a new one, and the one before is good no longer; Ctrl-C ends it', async () => {
  const { child, lines, ended } = served(folder);
  await until(() => lines.length === 1);
  expect(lines[0]).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/enter\?token=[\w-]{43}$/);
  child.stdin!.write('\n');
  await until(() => lines.length === 2);
  expect([await entered(lines[0]), await entered(lines[1]), await entered(lines[1])]).toEqual([403, 303, 403]);
  child.kill('SIGINT');
  expect(await ended).toBe(0);
  expect(lines.slice(2)).toEqual(['ended']);
});

test('a save that is under way when Ctrl-C comes is written first', async () => {
  const { child, lines, ended } = served(folder);
  await until(() => lines.length === 1);
  const { origin } = new URL(lines[0]!);
  const entry = await fetch(lines[0]!, { redirect: 'manual' });
  const cookie = entry.headers.get('set-cookie')!.split(';', 1)[0]!;
  const { hash } = (await (await fetch(`${origin}/api/plant`, { headers: { cookie } })).json()) as { hash: string };
  const text = `soundpost: plant\nversion: 1\n# ${'long '.repeat(500_000)}\n`;
  const saving = fetch(`${origin}/api/plant`, {
    method: 'PUT',
    headers: { cookie, origin, 'content-type': 'application/json' },
    body: JSON.stringify({ base: hash, text, journal: { steps: [], done: 0 } }),
  });
  await new Promise((settle) => setTimeout(settle, 15));
  child.kill('SIGINT');
  // Whoever came too late is told so by a closed connection, and then nothing is written.
  const status = await saving.then(
    (answer) => answer.status,
    () => undefined,
  );
  expect(await ended).toBe(0);
  expect(readFileSync(plant, 'utf8') === text).toBe(status === 200);
});

test('a page that is not built is refused with how to build it', async () => {
  const { lines, ended } = served(join(folder, 'nowhere'));
  expect(await ended).toBe(1);
  expect(lines.join('')).toContain('npm run build -w packages/web');
});
