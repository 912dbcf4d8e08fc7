// Takes a picture of the first two pages of every document of an issue, for a person to judge by eye:
// `npm run build && node tools/document-pictures.mjs`. Needs pdftoppm of poppler-utils. Nothing compares them.
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join, resolve } from 'node:path';

const root = resolve(import.meta.dirname, '..');
const into = join(root, 'goldens/pictures');
const pages = 2;
const dotsPerInch = 100;
const largest = 5_000_000;

const folder = mkdtempSync(join(tmpdir(), 'soundpost-document-pictures-'));
try {
  const program = join(root, 'packages/cli/bin/soundpost.js');
  const plant = join(root, 'examples/solvent-recovery/plant.yaml');
  const words = ['--out', folder, '--revision', 'A', '--forms', 'pdf', '--paper', 'a4', '--preliminary'];
  execFileSync(process.execPath, [program, 'issue', plant, ...words], { stdio: ['ignore', 'ignore', 'inherit'] });
  mkdirSync(into, { recursive: true });
  for (const name of readdirSync(into)) if (name.endsWith('.png')) rmSync(join(into, name));
  const issued = join(folder, 'revision-A');
  for (const name of readdirSync(issued).filter((each) => each.endsWith('.pdf'))) {
    const to = join(into, basename(name, '.pdf'));
    const raster = ['-q', '-png', '-gray', '-r', String(dotsPerInch), '-l', String(pages), join(issued, name), to];
    execFileSync('pdftoppm', raster);
  }
} finally {
  rmSync(folder, { recursive: true });
}

const taken = readdirSync(into).filter((name) => name.endsWith('.png'));
const bytes = taken.reduce((sum, name) => sum + statSync(join(into, name)).size, 0);
console.log(`${taken.length} pictures, ${(bytes / 1e6).toFixed(1)} MB, in goldens/pictures`);
if (bytes > largest) throw new Error(`more than ${largest / 1e6} MB of pictures: take fewer pages or dots`);
