import { mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Refusal } from '@soundpost/core';
import { afterAll, expect, test } from 'vitest';
import { openBytes } from './open-bytes.ts';

const folder = mkdtempSync(join(tmpdir(), 'soundpost-open-bytes-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('a file is read in pieces from any place, and no further than its end', async () => {
  const path = join(folder, 'record.wav');
  writeFileSync(
    path,
    Uint8Array.from({ length: 100 }, (_, index) => index),
  );
  const bytes = await openBytes(path);
  expect(bytes.size).toBe(100);
  expect([...(await bytes.read(10, 3))]).toEqual([10, 11, 12]);
  expect([...(await bytes.read(98, 50))]).toEqual([98, 99]);
  expect([...bytes.readNow(98, 50)]).toEqual([98, 99]);
  expect(await bytes.read(100, 1)).toHaveLength(0);
  expect(await bytes.read(5000, 1)).toHaveLength(0);
  await bytes.close();
});

test('a file of 10 GB is opened, and a piece near its end is read', async () => {
  const path = join(folder, 'vast.wav');
  writeFileSync(path, 'RF64');
  truncateSync(path, 10 * 1024 ** 3);
  const bytes = await openBytes(path);
  expect(bytes.size).toBe(10 * 1024 ** 3);
  expect([...(await bytes.read(bytes.size - 2, 10))]).toEqual([0, 0]);
  await bytes.close();
});

test('a file that has become shorter gives what is left', async () => {
  const path = join(folder, 'shrinks.wav');
  writeFileSync(path, 'x'.repeat(1000));
  const bytes = await openBytes(path);
  truncateSync(path, 10);
  expect(await bytes.read(0, 1000)).toHaveLength(10);
  await bytes.close();
});

test('negative: no file, and a folder, are refused in words', async () => {
  await expect(openBytes(join(folder, 'recrod.wav'))).rejects.toThrow(Refusal);
  await expect(openBytes(join(folder, 'recrod.wav'))).rejects.toThrow("Did you mean 'record.wav'?");
  await expect(openBytes(folder)).rejects.toThrow('It is a folder.');
});
