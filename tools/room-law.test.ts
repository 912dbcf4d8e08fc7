import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { rooms } from '../packages/core/src/rooms.ts';

const core = resolve(import.meta.dirname, '../packages/core/src');

function sourceFiles(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return sourceFiles(path);
    return entry.name.endsWith('.ts') ? [path] : [];
  });
}

function importsOf(path: string): string[] {
  const text = readFileSync(path, 'utf8');
  return [...text.matchAll(/(?:import|export)\s[^'"]*?from\s*'([^']+)'|import\s*\(\s*'([^']+)'/g)].map(
    (match) => match[1] ?? match[2]!,
  );
}

const files = sourceFiles(core);
const roomOf = (path: string) => relative(core, path).split('/')[0]!;

test('law: every folder of the core is a room of the list, and every room is a folder with a README', () => {
  const folders = readdirSync(core, { withFileTypes: true }).filter((each) => each.isDirectory());
  expect(folders.map((each) => each.name).sort()).toEqual([...rooms].sort());
  for (const room of rooms) {
    const readme = readFileSync(join(core, room, 'README.md'), 'utf8');
    expect(readme.trim().split('\n').length, `${room}/README.md`).toBeLessThanOrEqual(12);
  }
});

test('law: a room imports only from rooms above it', () => {
  const broken = files.flatMap((path) => {
    const own = (rooms as readonly string[]).indexOf(roomOf(path));
    if (own < 0 || path.endsWith('.test.ts')) return [];
    return importsOf(path).flatMap((target) => {
      if (!target.startsWith('.')) return [`${relative(core, path)} imports ${target}`];
      const room = (rooms as readonly string[]).indexOf(roomOf(resolve(dirname(path), target)));
      return room >= 0 && room <= own ? [] : [`${relative(core, path)} imports ${target}`];
    });
  });
  expect(broken).toEqual([]);
});

test('law: the core has no clock, no chance, no input and no output', () => {
  const forbidden =
    /\bMath\.random\b|\bnew Date\b|\bDate\.now\b|\bperformance\b|\bprocess\.|\bconsole\.|\bfetch\(|\bsetTimeout\b|from 'node:/;
  const broken = files
    .filter((path) => !path.endsWith('.test.ts'))
    .filter((path) => forbidden.test(readFileSync(path, 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')))
    .map((path) => relative(core, path));
  expect(broken).toEqual([]);
});

test('law: packages lean on each other in one direction', () => {
  const order = ['core', 'files', 'store', 'solver', 'documents', 'typesetting', 'commands', 'server', 'cli'];
  const packages = resolve(core, '../..');
  const broken = order.flatMap((name, own) => {
    const manifest = JSON.parse(readFileSync(join(packages, name, 'package.json'), 'utf8')) as {
      dependencies?: Record<string, string>;
    };
    return Object.keys(manifest.dependencies ?? {})
      .filter((each) => each.startsWith('@soundpost/'))
      .filter((each) => order.indexOf(each.slice('@soundpost/'.length)) >= own)
      .map((each) => `${name} leans on ${each}`);
  });
  expect(broken).toEqual([]);
});
