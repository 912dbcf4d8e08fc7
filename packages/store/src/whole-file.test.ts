import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { isUnfinished } from './unfinished-file.ts';
import { replaceWhole } from './whole-file.ts';

// The children are killed processes of their own, so they run the compiled file, compiled here from the source.
const folder = mkdtempSync(join(tmpdir(), 'soundpost-whole-file-'));
const source = fileURLToPath(new URL('./whole-file.ts', import.meta.url));
const root = fileURLToPath(new URL('../../../', import.meta.url));

const size = 400_000;
/** Content that shows whether it is whole: its number, that many times the same letter, and its end. */
const content = `(n) => n + ':' + String.fromCharCode(97 + (n % 26)).repeat(${size}) + ':end'`;

const children = {
  whole: `import { replaceWhole } from './whole-file.js';
    const content = ${content};
    for (let n = 1; ; n++) { await replaceWhole(process.argv[2], content(n), { overwrite: true }); if (n === 1) console.log('begun'); }`,
  // What the test must be able to catch: a file written in two steps.
  naive: `import { writeFileSync, appendFileSync } from 'node:fs';
    const content = ${content};
    for (let n = 1; ; n++) { const text = content(n); writeFileSync(process.argv[2], text.slice(0, ${size / 2}));
      if (n === 1) console.log('begun'); await new Promise((go) => setTimeout(go, 20)); appendFileSync(process.argv[2], text.slice(${size / 2})); }`,
};

beforeAll(() => {
  const flags = [
    '--ignoreConfig',
    '--module',
    'nodenext',
    '--target',
    'es2023',
    '--types',
    'node',
    '--skipLibCheck',
    '--rewriteRelativeImportExtensions',
  ];
  const compiler = join(root, 'node_modules', 'typescript', 'bin', 'tsc');
  execFileSync(process.execPath, [compiler, ...flags, '--outDir', folder, source], { cwd: root });
  writeFileSync(join(folder, 'package.json'), '{"type":"module"}');
  for (const [name, text] of Object.entries(children)) writeFileSync(join(folder, `${name}.js`), text);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function isWhole(text: string): boolean {
  const [number = '', letters = '', end] = text.split(':');
  const letter = String.fromCharCode(97 + (Number(number) % 26));
  return end === 'end' && letters.length === size && letters === letter.repeat(size);
}

/** Kills the child a random time after it has begun, and gives what stands in the file then. */
async function killed(child: keyof typeof children, path: string): Promise<string> {
  const process_: ChildProcess = spawn(process.execPath, [join(folder, `${child}.js`), path], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = new Promise((resolve) => process_.once('exit', resolve));
  await new Promise((resolve) => process_.stdout?.once('data', resolve));
  await new Promise((resolve) => setTimeout(resolve, Math.random() * 60));
  process_.kill('SIGKILL');
  await ended;
  return readFileSync(path, 'utf8');
}

test('law: after kill -9 at any time the file is whole, the old one or the new one', async () => {
  const path = join(folder, 'plant.yaml');
  const numbers = new Set<string>();
  for (let cycle = 0; cycle < 20; cycle++) {
    const text = await killed('whole', path);
    expect(isWhole(text), `cycle ${cycle}: ${text.length} characters, from ${text.slice(0, 20)}`).toBe(true);
    numbers.add(text.slice(0, text.indexOf(':')));
  }
  // The kills fell into different writes, and what they left over can be told from the plant's own files.
  expect(numbers.size).toBeGreaterThan(1);
  const strangers = readdirSync(folder).filter((name) => !isUnfinished(name) && !/\.(js|json|yaml)$/.test(name));
  expect(strangers).toEqual([]);
}, 30_000);

test('the same kills do catch a file that is written in two steps', async () => {
  const path = join(folder, 'naive.yaml');
  let torn = 0;
  for (let cycle = 0; cycle < 12 && torn === 0; cycle++) if (!isWhole(await killed('naive', path))) torn++;
  expect(torn).toBeGreaterThan(0);
}, 30_000);

test('a file that another program writes while the new one goes to the disk is left to it', async () => {
  const path = join(folder, 'between.yaml');
  writeFileSync(path, 'as it was');
  const from = new TextEncoder().encode('as it was');
  const meanwhile = function* () {
    yield 'mine, ';
    writeFileSync(path, 'theirs');
    yield 'whole';
  };
  await expect(replaceWhole(path, meanwhile(), { overwrite: true, from })).rejects.toMatchObject({ code: 'ECHANGED' });
  expect(readFileSync(path, 'utf8')).toBe('theirs');
  expect(readdirSync(folder).filter((name) => name.endsWith('.part') && isOurs(name))).toEqual([]);
  rmSync(path);
  await expect(replaceWhole(path, 'mine', { overwrite: true, from })).rejects.toMatchObject({ code: 'ECHANGED' });
  writeFileSync(path, 'as it was');
  await replaceWhole(path, 'mine', { overwrite: true, from });
  expect(readFileSync(path, 'utf8')).toBe('mine');
});

const isOurs = (name: string): boolean => name.includes(`-${process.pid}-`);
