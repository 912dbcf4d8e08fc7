// Writes docs/performance.md from bench/results/: `node bench/written-results.mjs`; `npm run bench` does it at its end.
import { readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const results = join(import.meta.dirname, 'results');
const page = join(import.meta.dirname, '../docs/performance.md');

/** One file of figures as a section: what it was measured on, then a table as wide as its rows. */
function section(record) {
  const { bench, machine, versions, load, loadAfter, unit, browser, rows = {}, ...rest } = record;
  const on = [
    `${machine.processor}, ${machine.cores} cores, ${machine.memoryGiB} GiB`,
    ...Object.entries(versions).map(([name, version]) => `${name} ${version}`),
    ...(browser === undefined ? [] : [browser]),
  ];
  return [
    `## ${bench}`,
    '',
    `Measured on ${on.join('; ')}. Load of the machine before: ${load.join(', ')}; after: ${loadAfter.join(', ')}.`,
    ...(unit === undefined ? [] : ['', `Unit: ${unit}.`]),
    '',
    ...table(rows),
    ...Object.entries(rest).flatMap(([name, value]) => ['', `${spelled(name)}: ${told(value)}.`]),
    '',
  ];
}

function table(rows) {
  const each = Object.entries(rows);
  const columns = [...new Set(each.flatMap(([, row]) => Object.keys(row)))];
  if (each.length === 0) return ['No rows.'];
  const line = (cells) => `| ${cells.map((cell) => String(cell).replaceAll('|', '\\|')).join(' | ')} |`;
  return [
    line(['', ...columns.map(spelled)]),
    line(['', ...columns].map(() => '---')),
    ...each.map(([name, row]) => line([name, ...columns.map((column) => told(row[column] ?? ''))])),
  ];
}

function told(value) {
  if (value === null) return 'not measured';
  if (typeof value !== 'object') return String(value);
  return Object.entries(value)
    .map(
      ([name, inner]) =>
        `${spelled(name)} ${typeof inner === 'object' && inner !== null ? `(${told(inner)})` : told(inner)}`,
    )
    .join(', ');
}

/** `pageThread` as `page thread`, `peakMiB` as `peak MiB`; names of files as they are. */
function spelled(name) {
  if (name.includes('.')) return name;
  const [, words, unit = ''] = /^(.*?)(MiB|kB)?$/.exec(name);
  return `${words.replace(/(?<=[a-z])[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)} ${unit}`.trim();
}

export function writeResults() {
  const names = readdirSync(results).filter((name) => name.endsWith('.json'));
  const records = names.sort().map((name) => JSON.parse(readFileSync(join(results, name), 'utf8')));
  const lines = [
    '# Performance',
    '',
    'Written by `npm run bench` from `bench/results/`; what each bench does, and how to run it, stands in `bench/`. Figures',
    'were measured on a machine that others used at the same time, as its load tells: medians say more than the worst.',
    'A 4 × slower processor is slowed by the browser for the thread of the page only, not for its workers.',
    '',
    ...records.flatMap(section),
  ];
  writeFileSync(`${page}.part`, `${lines.join('\n').trimEnd()}\n`);
  renameSync(`${page}.part`, page);
}

if (process.argv[1] === import.meta.filename) writeResults();
