import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative, resolve } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../../..');
const folder = mkdtempSync(join(tmpdir(), 'soundpost-interrupted-'));
const plant = join(folder, 'plant.yaml');
const out = join(folder, 'issued');
const revision = join(out, 'revision-A');
const kills = 16;

// The command is tested as it is installed, so it is built first.
beforeAll(() => {
  spawnSync(process.execPath, [join(root, 'node_modules/typescript/bin/tsc'), '-b', 'packages/cli'], { cwd: root });
  mkdirSync(out);
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const text = readFileSync(join(root, 'examples/raw-water-pump/plant.yaml'), 'utf8');
const words = ['--documents', 'instrument-list,cable-schedule,alarm-register,loop-diagrams', '--preliminary'];

function started(): { readonly child: ChildProcess; readonly ended: Promise<void> } {
  const program = join(root, 'packages/cli/bin/soundpost.js');
  const child = spawn(process.execPath, [program, 'issue', plant, '--out', out, ...words], { stdio: 'ignore' });
  return { child, ended: new Promise((settle) => child.once('exit', () => settle())) };
}

const unfinished = () => readdirSync(out).filter((name) => name.endsWith('.unfinished'));

/** The content an issue that stands was made from, once every file it lists is there with its hash, and no other. */
function wholeIssue(path: string): string {
  const contents = JSON.parse(readFileSync(join(path, 'contents.json'), 'utf8')) as {
    readonly contentHash: string;
    readonly files: readonly { readonly path: string; readonly sha256: string }[];
  };
  for (const each of contents.files) {
    const hash = createHash('sha256').update(readFileSync(join(path, each.path)));
    expect(hash.digest('hex'), each.path).toBe(each.sha256);
  }
  const standing = readdirSync(path, { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile())
    .map((each) => relative(path, join(each.parentPath, each.name)).replaceAll('\\', '/'));
  expect(standing.sort()).toEqual([...contents.files.map((each) => each.path), 'contents.json'].sort());
  return contents.contentHash;
}

test('killed at many moments: the old issue stands whole or the new one, never half of one, and the next one works', {
  timeout: 300_000,
}, async () => {
  writeFileSync(plant, text);
  await started().ended;
  let stands = wholeIssue(revision);
  let cut = 0;
  let replaced = 0;
  const long = { writing: 0 };
  for (let kill = 0; kill < kills; kill++) {
    writeFileSync(plant, `${text}# content ${kill}\n`);
    const before = unfinished();
    const { child, ended } = started();
    // From the moment on at which it begins to write; the first one is let through, and says how long it takes.
    while (unfinished().every((each) => before.includes(each)) && child.exitCode === null) await pause(2);
    const began = performance.now();
    const timer =
      kill === 0 ? undefined : setTimeout(() => child.kill('SIGKILL'), (long.writing * 1.15 * kill) / (kills - 1));
    await ended;
    clearTimeout(timer);
    if (kill === 0) long.writing = performance.now() - began;
    if (unfinished().length > 0) cut++;
    // Between its two names the old issue stands beside: the next one gives it its name back.
    const hash = wholeIssue(existsSync(revision) ? revision : join(out, '.revision-A.replaced'));
    if (hash !== stands) replaced++;
    stands = hash;
  }
  expect(cut, 'some were cut off under way').toBeGreaterThan(kills / 4);
  expect(replaced, 'some came through').toBeGreaterThan(0);
  writeFileSync(plant, `${text}# the last content\n`);
  await started().ended;
  expect(wholeIssue(revision)).not.toBe(stands);
  expect(readdirSync(out), 'nothing is left over').toEqual(['revision-A']);
});

test('stopped by Ctrl-C while it writes: it says so, ends with 130, and leaves what stood there and nothing else', {
  timeout: 60_000,
}, async () => {
  rmSync(out, { recursive: true });
  mkdirSync(out);
  writeFileSync(plant, text);
  await started().ended;
  const stands = wholeIssue(revision);
  writeFileSync(plant, `${text}# stopped by hand\n`);
  const child = spawn(
    process.execPath,
    [join(root, 'packages/cli/bin/soundpost.js'), 'issue', plant, '--out', out, '--preliminary'],
    { stdio: ['ignore', 'ignore', 'pipe'] },
  );
  const said: string[] = [];
  child.stderr.on('data', (piece: Buffer) => said.push(piece.toString()));
  const ended = new Promise<number | null>((settle) => child.once('close', (code) => settle(code)));
  while (unfinished().length === 0 && child.exitCode === null) await pause(2);
  child.kill('SIGINT');
  expect(await ended).toBe(130);
  expect(said.join('').replace(/\s+/g, ' ')).toContain('Stopped: nothing was written to');
  expect(wholeIssue(revision)).toBe(stands);
  expect(readdirSync(out)).toEqual(['revision-A']);
});

function pause(milliseconds: number): Promise<void> {
  return new Promise((settle) => setTimeout(settle, milliseconds));
}
