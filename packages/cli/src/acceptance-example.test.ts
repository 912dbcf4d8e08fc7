import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../../..');
const example = join(root, 'examples/acceptance');
const built = existsSync(join(root, 'packages/cli/dist/index.js'));

test.skipIf(!built)('the records of the acceptance example are made again byte for byte', { timeout: 240_000 }, () => {
  const folder = mkdtempSync(join(tmpdir(), 'soundpost-example-'));
  try {
    execFileSync(process.execPath, [join(example, 'make-records.mjs'), folder]);
    const kept = readdirSync(join(example, 'records')).sort();
    expect(readdirSync(folder).sort()).toEqual(kept);
    const other = kept.filter(
      (name) => !readFileSync(join(folder, name)).equals(readFileSync(join(example, 'records', name))),
    );
    expect(other).toEqual([]);
  } finally {
    rmSync(folder, { recursive: true });
  }
});

test('they weigh no more than 3 MB', () => {
  const bytes = readdirSync(join(example, 'records')).map((name) => statSync(join(example, 'records', name)).size);
  expect(bytes.reduce((sum, each) => sum + each, 0)).toBeLessThan(3e6);
});
