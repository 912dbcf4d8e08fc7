import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { writeWhole } from './folder.ts';
import { isUnfinished, takeUnfinishedAway, unfinishedName } from './unfinished-file.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'soundpost-unfinished-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

/** A process that has ended: its number is free. */
const dead = (): number => spawnSync(process.execPath, ['--version']).pid;
const put = (name: string): string => {
  writeFileSync(join(folder, name), 'half');
  return name;
};

test('what a writer that runs no longer left over is taken away, at the next write too', async () => {
  const over = put(unfinishedName(dead()));
  expect(isUnfinished(over)).toBe(true);
  await takeUnfinishedAway(folder);
  expect(readdirSync(folder)).toEqual([]);
  put(unfinishedName(dead()));
  await writeWhole(join(folder, 'plant.yaml'), 'new', { overwrite: true });
  expect(readdirSync(folder)).toEqual(['plant.yaml']);
});

test('negative: nothing else is taken away', async () => {
  const over = unfinishedName(dead());
  const [, machine = ''] = /^\.soundpost-([0-9a-f]{8})-/.exec(over)!;
  const other = machine.replace(/^./, (first) => (first === '0' ? '1' : '0'));
  const kept = [
    // of a process that runs: of this one, and of another user's
    unfinishedName(),
    unfinishedName(1),
    // of another machine on the share
    over.replace(machine, other),
    // with another process or another random part than its check value is of
    over.replace(/-(\d+)-/, '-1$1-'),
    over.replace(/-[0-9a-f]{16}-/, '-0123456789abcdef-'),
    // of an earlier Soundpost, and of somebody else
    '.soundpost-0123456789abcdef.part',
    `${over}.bak`,
    `x${over}`,
    'plant.yaml',
  ].map(put);
  mkdirSync(join(folder, unfinishedName(dead())));
  symlinkSync(join(folder, 'plant.yaml'), join(folder, unfinishedName(dead())));
  const before = readdirSync(folder).sort();
  expect(before).toHaveLength(kept.length + 2);
  await takeUnfinishedAway(folder);
  expect(readdirSync(folder).sort()).toEqual(before);
  expect(existsSync(join(folder, 'plant.yaml'))).toBe(true);
});
