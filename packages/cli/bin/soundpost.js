#!/usr/bin/env node
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const main = new URL('../dist/main.js', import.meta.url);
if (existsSync(fileURLToPath(main))) {
  const { run } = await import(main.href);
  process.exitCode = await run(process.argv.slice(2));
} else {
  process.stderr.write('Soundpost is not built here yet. Run `npm ci` (or `npm run build`) in its folder first.\n');
  process.exitCode = 70;
}
