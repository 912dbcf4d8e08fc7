import { existsSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'vite';

const web = resolve(import.meta.dirname, '..');
const packages = resolve(web, '..');

/** What the page is made of: what the bundler reads, and what the other packages give it. */
const madeOf = [
  join(web, 'index.html'),
  join(web, 'vite.config.ts'),
  ...readdirSync(packages)
    .map((name) => join(packages, name, 'src'))
    .filter((path) => existsSync(path)),
];

let built: Promise<string> | undefined;

/** The folder of the page as its sources say it: the built one where nothing changed since, otherwise built aside, once. */
export function builtPage(): Promise<string> {
  built ??= isFresh(join(web, 'dist')) ? Promise.resolve(join(web, 'dist')) : builtAside();
  return built;
}

async function builtAside(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'soundpost-page-'));
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  await build({
    root: web,
    configFile: join(web, 'vite.config.ts'),
    logLevel: 'error',
    build: { outDir: folder, emptyOutDir: true, reportCompressedSize: false },
  });
  return folder;
}

function isFresh(folder: string): boolean {
  const page = join(folder, 'index.html');
  if (!existsSync(page)) return false;
  const when = statSync(page).mtimeMs;
  return madeOf.every((path) => newest(path) < when);
}

function newest(path: string): number {
  const { mtimeMs } = statSync(path);
  if (!statSync(path).isDirectory()) return mtimeMs;
  return Math.max(mtimeMs, ...readdirSync(path).map((each) => newest(join(path, each))));
}
