import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { generatedPlant } from '../evidence/document-set/plant.mjs';
import { rounded } from './spread.mjs';

const root = resolve(import.meta.dirname, '..');
const sizes = (process.env.POINTS ?? '50,500,2000,5000').split(',').map(Number);

/**
 * What a set costs: a generated plant of more and more points issued whole, every document in every form, each in a
 * process of its own; and how time and memory grow from one size to the next.
 */
export async function measured() {
  if (!existsSync(join(root, 'packages/cli/dist/main.js')))
    return { notRun: 'the command is not built; run `npm run build` first' };
  const folder = mkdtempSync(join(tmpdir(), 'soundpost-bench-'));
  try {
    const rows = {};
    for (const points of sizes) {
      rows[`${points} points`] = await issued(folder, points);
      console.error(`${points} points: ${JSON.stringify(rows[`${points} points`])}`);
    }
    return { unit: 's, MiB, pages', rows, growth: growth(Object.values(rows)) };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

async function issued(folder, points) {
  const plant = join(folder, `${points}.yaml`);
  const out = join(folder, `${points}`);
  writeFileSync(plant, generatedPlant(points));
  const load = rounded(loadavg()[0]);
  const told = await apart([join(import.meta.dirname, 'issued-apart.mjs'), plant, out]);
  if (told.seconds === undefined) return { failed: told.said.replaceAll(`${folder}/`, ''), load };
  const set = join(out, 'revision-A');
  const { files } = JSON.parse(readFileSync(join(set, 'contents.json'), 'utf8'));
  const pages = files.reduce((sum, each) => sum + (each.pages ?? 0), 0);
  return {
    points,
    pages,
    files: files.length,
    seconds: rounded(told.seconds),
    processorSeconds: rounded(told.processorSeconds),
    pagesPerSecond: rounded(pages / told.seconds),
    peakMiB: Math.round(told.peakMiB),
    load,
  };
}

/** From one size to the next: the exponent of the processor time over the points, and the memory each point adds. */
function growth(rows) {
  const done = rows.filter((each) => each.failed === undefined);
  return done.slice(1).map((to, at) => {
    const from = done[at];
    const times = Math.log(to.points / from.points);
    return {
      from: from.points,
      to: to.points,
      exponentOfTime: rounded(Math.log(to.processorSeconds / from.processorSeconds) / times),
      kibibytesPerPoint: Math.round((1024 * (to.peakMiB - from.peakMiB)) / (to.points - from.points)),
    };
  });
}

/** Runs a script in a process of its own; what it writes to its fourth channel is what it measured. */
function apart(parameters) {
  return new Promise((done) => {
    const child = spawn(process.execPath, parameters, { stdio: ['ignore', 'ignore', 'pipe', 'pipe'] });
    let said = '';
    let told = '';
    child.stderr.on('data', (data) => {
      said = `${said}${data}`.slice(-600);
    });
    child.stdio[3].on('data', (data) => {
      told += data;
    });
    child.on('close', (code, signal) => {
      const failed = `ended with ${code ?? signal}: ${said}`;
      done(code === 0 && told !== '' ? JSON.parse(told) : { said: failed });
    });
  });
}
