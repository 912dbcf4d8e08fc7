import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build, defaultServerConditions } from 'vite';

const web = resolve(import.meta.dirname, '../packages/web');

/** What a module of the page gives, bundled as the page is and taken into Node. */
export async function bundled(entry) {
  const folder = mkdtempSync(join(tmpdir(), 'soundpost-bench-'));
  try {
    await build({
      configFile: false,
      root: web,
      logLevel: 'error',
      resolve: { conditions: ['source', ...defaultServerConditions] },
      ssr: { noExternal: true },
      build: {
        ssr: join(web, 'src', entry),
        outDir: folder,
        target: 'es2023',
        minify: true,
        rollupOptions: { output: { entryFileNames: 'entry.mjs' } },
      },
    });
    return await import(pathToFileURL(join(folder, 'entry.mjs')).href);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
