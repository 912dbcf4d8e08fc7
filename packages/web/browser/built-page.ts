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

/** A folder with the page as its sources say it. */
export interface BuiltPage {
  readonly folder: string;
  /** Takes away what was made only for this. */
  remove(): void;
}

/** The page as it stands built where nothing changed since, otherwise built aside. */
export async function builtPage(): Promise<BuiltPage> {
  const standing = join(web, 'dist');
  if (isFresh(standing)) return { folder: standing, remove: () => {} };
  const folder = mkdtempSync(join(tmpdir(), 'soundpost-page-'));
  // A run of tests says it is one, and the page would be built with what only helps who develops it.
  const environment = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  try {
    await build({
      root: web,
      configFile: join(web, 'vite.config.ts'),
      logLevel: 'error',
      build: { outDir: folder, emptyOutDir: true, reportCompressedSize: false },
    });
  } finally {
    process.env.NODE_ENV = environment;
  }
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
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
