import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { hostileFiles } from './hostile-files.ts';

const folder = mkdtempSync(join(tmpdir(), 'soundpost-hostile-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const root = fileURLToPath(new URL('../../../', import.meta.url));

/** Compiles the door and what it needs of the core into a folder where a process of its own can run it. */
function compiled(): void {
  const flags = ['--ignoreConfig', '--module', 'nodenext', '--target', 'es2023', '--types', 'node', '--skipLibCheck'];
  const sources = [
    'packages/files/src/yaml-document.ts',
    'packages/files/src/hostile-files.ts',
    'packages/core/src/quantity/index.ts',
  ];
  const compiler = join(root, 'node_modules', 'typescript', 'bin', 'tsc');
  const how = [
    '--rewriteRelativeImportExtensions',
    '--customConditions',
    'source',
    '--rootDir',
    'packages',
    '--outDir',
    folder,
  ];
  // Types are checked elsewhere; here only the emitted files count.
  spawnSync(process.execPath, [compiler, ...flags, ...how, ...sources], { cwd: root });
  const core = join(folder, 'node_modules', '@soundpost', 'core');
  mkdirSync(core, { recursive: true });
  writeFileSync(join(folder, 'package.json'), '{"type":"module"}');
  writeFileSync(join(core, 'package.json'), '{"type":"module","exports":"./index.js"}');
  writeFileSync(join(core, 'index.js'), "export * from '../../../core/src/quantity/index.js';");
  symlinkSync(join(root, 'node_modules', 'yaml'), join(folder, 'node_modules', 'yaml'), 'dir');
}

const child = `
import { textFile } from './files/src/text-file.js';
import { placedYaml } from './files/src/yaml-document.js';
import { hostileFiles } from './files/src/hostile-files.js';
let refused = 0;
for (const [name, text] of hostileFiles) {
  try { placedYaml(textFile(new TextEncoder().encode(text()), name)); } catch (error) { if (error.name === 'UnreadableFile') refused++; }
}
console.log(refused);
`;

test('every hostile file is refused by a process that has 320 MB of heap', { timeout: 60_000 }, () => {
  compiled();
  expect(existsSync(join(folder, 'files', 'src', 'yaml-document.js'))).toBe(true);
  writeFileSync(join(folder, 'child.js'), child);
  const ended = execFileSync(process.execPath, ['--max-old-space-size=320', 'child.js'], {
    cwd: folder,
    encoding: 'utf8',
  });
  expect(Number(ended)).toBe(hostileFiles.length);
});
