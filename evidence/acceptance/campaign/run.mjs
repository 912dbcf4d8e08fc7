// Finds the rates of acceptance by rehearsal: `node evidence/acceptance/campaign/run.mjs healthy 1000 60` makes runs up
// to a thousand in at most sixty minutes and goes on where it stopped, as long as the code is the same commit.
// `node evidence/acceptance/campaign/run.mjs page` writes docs/acceptance-rates.md of what was found.
import { execFileSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build, defaultServerConditions } from 'vite';

const evidence = resolve(import.meta.dirname, '../..');
// Beside evidence/reading.ts, which finds the examples by where it stands.
const name = `.campaign-${process.pid}.mjs`;
const [what = 'healthy', runs = '1000', minutes = '600'] = process.argv.slice(2);
const git = (...words) => execFileSync('git', words, { cwd: evidence, encoding: 'utf8' }).trim();

try {
  await build({
    configFile: false,
    root: evidence,
    logLevel: 'error',
    resolve: { conditions: ['source', ...defaultServerConditions] },
    ssr: { noExternal: true },
    build: {
      ssr: join(import.meta.dirname, 'run.ts'),
      outDir: evidence,
      emptyOutDir: false,
      copyPublicDir: false,
      target: 'es2023',
      minify: false,
      rollupOptions: { output: { entryFileNames: name } },
    },
  });
  const { runCampaign, writePage } = await import(pathToFileURL(join(evidence, name)).href);
  if (what === 'page') writePage();
  const state = process.env.CAMPAIGN_COMMIT ?? git('log', '-1', '--format=%h', '--', 'packages/core/src', 'evidence');
  if (what !== 'page') runCampaign(what, Number(runs), Number(minutes), git('log', '-1', '--format=%cs'), state);
} finally {
  rmSync(join(evidence, name), { force: true });
}
