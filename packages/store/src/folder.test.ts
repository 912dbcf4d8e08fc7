import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Refusal } from '@soundpost/core';
import { afterAll, expect, test } from 'vitest';
import { readBytes, writeWhole } from './folder.ts';

const folder = mkdtempSync(join(tmpdir(), 'soundpost-folder-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let made = 0;
function freshFolder(): string {
  const path = join(folder, `case-${++made}`);
  mkdirSync(path);
  return path;
}

async function refusalOf(attempt: Promise<unknown>): Promise<string> {
  const error = await attempt.then(
    () => undefined,
    (reason: unknown) => reason,
  );
  if (!(error instanceof Refusal)) throw new Error(`expected a Refusal, got ${String(error)}`);
  return error.message;
}

test('what was written is read back, byte for byte', async () => {
  const path = join(freshFolder(), 'plant.yaml');
  await writeWhole(path, 'title: Förderpumpe 20 °C\n');
  expect(new TextDecoder().decode(await readBytes(path))).toBe('title: Förderpumpe 20 °C\n');
  await writeWhole(path, Uint8Array.of(0, 255, 10), { overwrite: true });
  expect([...(await readBytes(path))]).toEqual([0, 255, 10]);
  await writeWhole(path, '', { overwrite: true });
  expect((await readBytes(path)).length).toBe(0);
});

test('a name that is taken is left alone unless the caller says so, and nothing is left beside it', async () => {
  const inside = freshFolder();
  const path = join(inside, 'plant.yaml');
  await writeWhole(path, 'first');
  expect(await refusalOf(writeWhole(path, 'second'))).toContain('a name that is not taken');
  expect(readFileSync(path, 'utf8')).toBe('first');
  await writeWhole(path, 'third', { overwrite: true });
  expect(readFileSync(path, 'utf8')).toBe('third');
  expect(readdirSync(inside)).toEqual(['plant.yaml']);
});

test('of many writers that want one new name, exactly one gets it, and its content is whole', async () => {
  const inside = freshFolder();
  const path = join(inside, 'plant.yaml');
  const contents = Array.from({ length: 20 }, (_, writer) => String(writer).repeat(10_000));
  const ends = await Promise.allSettled(contents.map((content) => writeWhole(path, content)));
  expect(ends.filter((end) => end.status === 'fulfilled')).toHaveLength(1);
  expect(contents).toContain(readFileSync(path, 'utf8'));
  expect(readdirSync(inside)).toEqual(['plant.yaml']);
});

test('a folder in the way is not replaced, and nothing is left beside it', async () => {
  const inside = freshFolder();
  mkdirSync(join(inside, 'plant.yaml', 'kept'), { recursive: true });
  for (const overwrite of [true, false]) {
    await refusalOf(writeWhole(join(inside, 'plant.yaml'), 'text', { overwrite }));
  }
  expect(readdirSync(inside)).toEqual(['plant.yaml']);
  expect(readdirSync(join(inside, 'plant.yaml'))).toEqual(['kept']);
});

test('a link is followed, and permissions are kept', async () => {
  const inside = freshFolder();
  writeFileSync(join(inside, 'real.yaml'), 'old');
  chmodSync(join(inside, 'real.yaml'), 0o640);
  symlinkSync(join(inside, 'real.yaml'), join(inside, 'link.yaml'));
  await writeWhole(join(inside, 'link.yaml'), 'new', { overwrite: true });
  expect(readFileSync(join(inside, 'real.yaml'), 'utf8')).toBe('new');
  expect(statSync(join(inside, 'real.yaml')).mode & 0o777).toBe(0o640);
  expect(readdirSync(inside).sort()).toEqual(['link.yaml', 'real.yaml']);
});

test('a file of 50 MB is refused by its size, without being read', async () => {
  const path = join(freshFolder(), 'plant.yaml');
  writeFileSync(path, '');
  truncateSync(path, 50_000_000);
  const message = await refusalOf(readBytes(path));
  expect(message).toContain('at most 16.0 MiB');
  expect(message).toContain('47.7 MiB');
  expect((await readBytes(path, 60_000_000)).length).toBe(50_000_000);
  // A hundred times what memory takes: only the size can have been asked.
  truncateSync(path, 2e11);
  expect(await refusalOf(readBytes(path))).toContain('at most 16.0 MiB');
});

test('what is no file is not opened: a folder, a device', async () => {
  expect(await refusalOf(readBytes(freshFolder()))).toContain('It is a folder.');
  expect(await refusalOf(readBytes('/dev/zero'))).toContain('It is a device or a pipe.');
});

test('a missing file is named with the one probably meant, a missing folder as such', async () => {
  const inside = freshFolder();
  writeFileSync(join(inside, 'plant.yaml'), '');
  expect(await refusalOf(readBytes(join(inside, 'plamt.yaml')))).toContain("Did you mean 'plant.yaml'?");
  expect(await refusalOf(readBytes(join(inside, 'north', 'plant.yaml')))).toContain('a folder that exists');
  expect(await refusalOf(writeWhole(join(inside, 'north', 'plant.yaml'), ''))).toContain('a folder that exists');
});
