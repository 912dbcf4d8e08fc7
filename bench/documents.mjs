import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { chromium } from 'playwright-core';
import { generatedPlant } from '../evidence/document-set/plant.mjs';
import { rounded } from './spread.mjs';

const root = resolve(import.meta.dirname, '..');
const places = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
const sizes = (process.env.POINTS ?? '50,500,2000').split(',').map(Number);
const printedPages = 100;

/**
 * What a set costs: a generated plant of more and more points issued whole, each in a process of its own; and the same
 * drawings, one to a page, as headless Chromium prints them.
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
    return { unit: 's, MiB, pages', rows, printed: await printed(join(folder, `${sizes[0]}`, 'revision-A')) };
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
  if (told.seconds === undefined) return { failed: told.said, load };
  const set = join(out, 'revision-A');
  const { files } = JSON.parse(readFileSync(join(set, 'contents.json'), 'utf8'));
  const pages = files.reduce((sum, each) => sum + (each.pages ?? 0), 0);
  return {
    pages,
    files: files.length,
    seconds: rounded(told.seconds),
    pagesPerSecond: rounded(pages / told.seconds),
    peakMiB: Math.round(told.peakMiB),
    load,
  };
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

/** The drawings of a set, one to a page, printed by headless Chromium: what a page made for a browser would have cost. */
async function printed(set) {
  const executablePath = places.find((each) => each !== undefined && existsSync(each));
  if (executablePath === undefined) return { notRun: 'no Chromium was found; CHROMIUM can name one' };
  const drawings = filesUnder(set).filter((each) => each.endsWith('.svg'));
  if (drawings.length === 0) return { notRun: 'the set has no drawing' };
  const sheets = Array.from({ length: printedPages }, (_, at) => readFileSync(drawings[at % drawings.length], 'utf8'));
  const style = '@page{size:A4 landscape;margin:15mm}section{break-after:page}svg{max-width:100%;max-height:170mm}';
  const html = `<!doctype html><meta charset="utf-8"><style>${style}</style>${sheets.map((each) => `<section>${each}</section>`).join('')}`;
  const load = rounded(loadavg()[0]);
  const began = performance.now();
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] });
  try {
    const page = await browser.newPage();
    await page.setContent(html);
    const pdf = await page.pdf({ preferCSSPageSize: true });
    const seconds = (performance.now() - began) / 1000;
    const found = pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
    return {
      browser: `Chromium ${browser.version()}`,
      drawings: Math.min(drawings.length, printedPages),
      pages: found,
      seconds: rounded(seconds),
      pagesPerSecond: rounded(found / seconds),
      load,
    };
  } finally {
    await browser.close();
  }
}

function filesUnder(folder) {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? filesUnder(path) : [path];
  });
}
