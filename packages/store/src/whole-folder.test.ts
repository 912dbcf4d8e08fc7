import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { asideOf, recoveredFolders, replaceFolder } from './whole-folder.ts';

const home = mkdtempSync(join(tmpdir(), 'soundpost-whole-folder-'));
afterAll(() => rmSync(home, { recursive: true, force: true }));

let made = 0;
function freshFolder(): string {
  const path = join(home, `case-${++made}`, 'revision-A');
  mkdirSync(join(path, '..'));
  return path;
}

const listing = 'contents.json';
const write = (files: Readonly<Record<string, string>>) => async (staged: string) => {
  mkdirSync(join(staged, 'tables'));
  const listed = Object.entries(files).map(([path, text]) => {
    writeFileSync(join(staged, path), text);
    return { path, sha256: createHash('sha256').update(text).digest('hex') };
  });
  writeFileSync(join(staged, listing), JSON.stringify({ files: listed }));
  return 'replace' as const;
};
const beside = (folder: string) => readdirSync(join(folder, '..')).sort();

test('a folder is filled under another name and takes its own; the next one takes its place', async () => {
  const folder = freshFolder();
  await replaceFolder(folder, listing, async (staged) => {
    expect(existsSync(folder)).toBe(false);
    return write({ 'a.pdf': 'old', 'tables/b.csv': 'old' })(staged);
  });
  expect(await replaceFolder(folder, listing, write({ 'a.pdf': 'new' }))).toBeUndefined();
  expect(readFileSync(join(folder, 'a.pdf'), 'utf8')).toBe('new');
  expect(existsSync(join(folder, 'tables/b.csv'))).toBe(false);
  expect(beside(folder)).toEqual(['revision-A']);
});

test('where filling fails or asks for it, the old folder stands as it was and nothing is left beside it', async () => {
  const folder = freshFolder();
  await replaceFolder(folder, listing, write({ 'a.pdf': 'old' }));
  await expect(
    replaceFolder(folder, listing, async (staged) => {
      await write({ 'a.pdf': 'half' })(staged);
      throw new Error('cut off');
    }),
  ).rejects.toThrow('cut off');
  await replaceFolder(folder, listing, async (staged) => {
    await write({ 'a.pdf': 'unwanted' })(staged);
    return 'keep';
  });
  expect(readFileSync(join(folder, 'a.pdf'), 'utf8')).toBe('old');
  expect(beside(folder)).toEqual(['revision-A']);
});

test("somebody's own files in the old folder are kept beside it: what is not listed, and what is not as listed", async () => {
  const folder = freshFolder();
  await replaceFolder(folder, listing, write({ 'a.pdf': 'old', 'tables/b.csv': 'old' }));
  writeFileSync(join(folder, 'remarks.txt'), 'mine');
  writeFileSync(join(folder, 'tables/b.csv'), 'old, with remarks');
  const kept = await replaceFolder(folder, listing, write({ 'a.pdf': 'new' }));
  expect(kept).toBe(`${folder}-kept`);
  expect(readFileSync(join(kept!, 'remarks.txt'), 'utf8')).toBe('mine');
  expect(readFileSync(join(kept!, 'tables/b.csv'), 'utf8')).toBe('old, with remarks');
  expect(existsSync(join(kept!, 'a.pdf'))).toBe(false);
  writeFileSync(join(folder, 'more.txt'), 'mine');
  expect(await replaceFolder(folder, listing, write({}))).toBe(`${folder}-kept-2`);
});

test('cut off between the two renamings, the old folder gets its name back', async () => {
  const folder = freshFolder();
  await replaceFolder(folder, listing, write({ 'a.pdf': 'old' }));
  renameSync(folder, asideOf(folder));
  await recoveredFolders(join(folder, '..'), listing);
  expect(readFileSync(join(folder, 'a.pdf'), 'utf8')).toBe('old');
  expect(beside(folder)).toEqual(['revision-A']);
});

test('cut off after the new folder has its name, the old one goes with the next look', async () => {
  const folder = freshFolder();
  await replaceFolder(folder, listing, write({ 'a.pdf': 'old' }));
  renameSync(folder, asideOf(folder));
  await write({ 'a.pdf': 'new' })(mkdirSync(folder, { recursive: true })!);
  await replaceFolder(folder, listing, async () => 'keep');
  expect(readFileSync(join(folder, 'a.pdf'), 'utf8')).toBe('new');
  expect(beside(folder)).toEqual(['revision-A']);
});

test('what a killed process left unfinished is taken away; what a living one writes is not', async () => {
  const folder = freshFolder();
  let living = '';
  await replaceFolder(folder, listing, async (staged) => {
    living = staged.split('/').at(-1)!;
    await write({ 'a.pdf': 'first' })(staged);
    // No process has this number: it is above the largest that Linux gives.
    const dead = join(folder, '..', living.replace(`.${process.pid}.`, '.4194305.'));
    mkdirSync(dead);
    await replaceFolder(folder, listing, write({ 'a.pdf': 'second' }));
    expect(existsSync(dead)).toBe(false);
    expect(existsSync(staged)).toBe(true);
    return 'replace';
  });
  expect(readFileSync(join(folder, 'a.pdf'), 'utf8')).toBe('first');
  expect(beside(folder)).toEqual(['revision-A']);
});
