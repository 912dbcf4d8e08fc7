import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../../..');
const bin = join(root, 'packages/cli/bin/soundpost.js');
const plant = 'examples/raw-water-pump/plant.yaml';
const folder = mkdtempSync(join(tmpdir(), 'soundpost-cli-'));

// The command line is tested as it is installed, so it is built first; whether types hold is the business of `npm run types`.
beforeAll(() => {
  spawnSync(process.execPath, [join(root, 'node_modules/typescript/bin/tsc'), '-b'], { cwd: root });
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function soundpost(words: readonly string[], env: Readonly<Record<string, string>> = {}) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [bin, ...words], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, ...env },
    maxBuffer: 64 * 1024 * 1024,
  });
  return { exit: status, out: stdout, err: stderr };
}

function blocked(): string {
  const path = join(folder, 'blocked.yaml');
  writeFileSync(path, readFileSync(join(root, plant), 'utf8').replace('mount: stud', 'mount: magnet-2pole'));
  return path;
}

test('exit 0, 1, 2: nothing blocks, a finding blocks, the input cannot be read', () => {
  expect(soundpost(['prove', plant])).toMatchObject({ exit: 0, err: '' });
  expect(soundpost(['prove', blocked()])).toMatchObject({ exit: 1, err: '' });
  const missing = soundpost(['prove', 'examples/raw-water-pump/plan.yaml']);
  expect(missing).toMatchObject({ exit: 2, out: '' });
  expect(missing.err.replace(/\s+/g, ' ')).toContain("Did you mean 'plant.yaml'?");
});

test.each([
  [['wrok', 'belt'], "Did you mean 'work'?"],
  [['prove', plant, '--jsn'], 'did you mean --json?'],
  [['work', 'mounted-respons'], "Did you mean 'mounted-response'?"],
  [['demand', plant, 'pump-drive-end-lop'], 'Did you mean'],
  [['shortlist', plant], 'POINT'],
  [['demand', plant, '--units', 'imperial'], 'metric'],
  [['explain', plant, 'pump-drive-end-loop', 'overall velocty'], "Did you mean 'overall velocity'?"],
])('a slip of the pen in %j ends with 2 and says what was probably meant', (words, meant) => {
  const { exit, out, err } = soundpost(words);
  expect({ exit, out }).toEqual({ exit: 2, out: '' });
  expect(err.replace(/\s+/g, ' ')).toContain(meant);
});

test.each([
  ['demand', plant],
  ['shortlist', plant, 'pump-drive-end-horizontal'],
  ['prove', plant],
  ['event', plant, 'pump-drive-end-loop'],
  ['explain', 'chain/overload'],
  ['explain', plant, 'pump-drive-end-loop'],
  ['workings'],
  ['work', 'mounted-response', 'resonance=27 kHz', 'tolerance=10 %'],
  ['doctor'],
  ['doctor', '--evidence'],
  ['schema', 'plant'],
  ['prove', 'nowhere.yaml'],
  ['prove', '--nonsense'],
])('--json of %s %s is one JSON document, on standard output alone', (...words) => {
  const { out, err } = soundpost([...words, '--json']);
  expect(err).toBe('');
  expect(typeof JSON.parse(out)).toBe('object');
});

test('flags of every command may stand before it', () => {
  expect(JSON.parse(soundpost(['--json', 'workings']).out)).toEqual(JSON.parse(soundpost(['workings', '--json']).out));
});

test.each([
  ['demand', plant],
  ['shortlist', plant, 'pump-drive-end-horizontal', '--all'],
  ['prove', plant],
  ['event', plant, 'pump-drive-end-loop', '--target', 'pump-drive-end-horizontal/bearing bursts'],
  ['explain', plant, 'pump-drive-end-horizontal'],
  ['explain'],
  ['workings'],
  ['doctor', '--evidence'],
  ['--help'],
])('%s %s keeps to 80 columns, and tells everything without colour', (...words) => {
  const { out } = soundpost(words, { NO_COLOR: '1' });
  expect(out.length).toBeGreaterThan(100);
  expect(Math.max(...out.split('\n').map((line) => [...line].length))).toBeLessThanOrEqual(80);
  expect(out).not.toContain('\u001b');
});

test('help lists every command, each has its own, and the version is one line', () => {
  const general = soundpost(['--help']).out;
  expect(soundpost([]).out).toBe(general);
  const names = [...general.matchAll(/^ {2}([a-z]+) {2,}\S/gm)].map((match) => match[1]!);
  expect(names).toEqual(
    expect.arrayContaining(['demand', 'shortlist', 'prove', 'explain', 'workings', 'work', 'doctor', 'new']),
  );
  expect(soundpost(['help', 'work']).out).toBe(soundpost(['work', '-h']).out);
  expect(soundpost(['--version']).out).toMatch(/^\d+\.\d+\.\d+\n$/);
});

test('a report is written with the folder it stands in', () => {
  const out = join(folder, 'deep/er/proof.html');
  const { exit } = soundpost(['prove', plant, '--out', out]);
  expect(exit).toBe(0);
  expect(readFileSync(out, 'utf8')).toMatch(/^<!doctype html>/i);
});

test('a report that cannot be written is refused in words', () => {
  const { exit, err } = soundpost(['prove', plant, '--out', join(blocked(), 'proof.html')]);
  expect(exit).toBe(2);
  expect(err.replace(/\s+/g, ' ')).toContain('expected a folder that can be made');
});

test('a reader that stops early is no fault', () => {
  const { status, stderr } = spawnSync('sh', ['-c', `"${process.execPath}" "${bin}" explain | head -1`], {
    cwd: root,
    encoding: 'utf8',
  });
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
});

test('the same command line works through the name that npm links', () => {
  const { status, stdout } = spawnSync('npx', ['--no-install', 'soundpost', '--version'], {
    cwd: root,
    encoding: 'utf8',
  });
  expect(status, 'run npm ci once, so that the name is linked').toBe(0);
  expect(stdout).toMatch(/^\d/);
});
