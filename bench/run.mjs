// Measures and writes bench/results/: `npm run bench`, or `npm run bench -- screen` for one of them.
import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { benches } from './benches.mjs';
import { circumstances } from './circumstances.mjs';
import { writeResults } from './written-results.mjs';

const results = join(import.meta.dirname, 'results');
const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !(name in benches));
if (unknown.length > 0) {
  console.error(`There is no bench ${unknown.join(', ')}. There are: ${Object.keys(benches).join(', ')}.`);
  process.exit(2);
}
mkdirSync(results, { recursive: true });
for (const name of asked.length > 0 ? asked : Object.keys(benches)) {
  const before = circumstances();
  const { measured } = await benches[name]();
  const found = await measured();
  const record = { bench: name, ...before, loadAfter: circumstances().load, ...found };
  if (found.notRun === undefined) written(join(results, `${name}.json`), `${JSON.stringify(record, undefined, 2)}\n`);
  console.log(`\n${name}${found.notRun === undefined ? '' : ` was not measured: ${found.notRun}`}`);
  if (found.rows !== undefined) console.table(found.rows);
}
writeResults();

function written(path, text) {
  writeFileSync(`${path}.part`, text);
  renameSync(`${path}.part`, path);
}
