import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { workbench } from '@soundpost/server';
import { chromium } from 'playwright-core';
import { genericCatalogue, manyPumps } from './plants.mjs';
import { rounded, spread } from './spread.mjs';

const built = process.env.SOUNDPOST_PAGE ?? resolve(import.meta.dirname, '../packages/web/dist');
const places = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
const sizes = (process.env.SOUNDPOST_POINTS ?? '2000 5000').split(' ').map(Number);
/** Seconds after which a plant is not waited for any longer. */
const longest = 240;
const scrolls = 120;

/**
 * The table of a whole plant in headless Chromium: until its rows stand, until every machine is worked out, how long
 * the page was kept from answering meanwhile, what a frame takes while it is scrolled, and what an edit takes.
 */
export async function measured() {
  const executablePath = places.find((each) => each !== undefined && existsSync(each));
  if (executablePath === undefined) return { notRun: 'no Chromium was found; CHROMIUM can name one' };
  if (!existsSync(join(built, 'index.html'))) return { notRun: 'the page is not built; run `npm run build` first' };
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] });
  const rows = {};
  try {
    for (const points of sizes) {
      const unfinished = (error) => ({ notMeasured: String(error.message).split('\n')[0] });
      rows[`${points} points`] = await tableOf(browser, points).catch(unfinished);
    }
    return { browser: `Chromium ${browser.version()}`, unit: 'ms, but seconds for the plant and MiB of memory', rows };
  } finally {
    await browser.close();
  }
}

async function tableOf(browser, points) {
  const folder = mkdtempSync(join(tmpdir(), 'soundpost-bench-'));
  const plant = join(folder, 'plant.yaml');
  const text = manyPumps(points);
  writeFileSync(plant, text.plant);
  const served = await workbench({ plant, port: 0, genericCatalogue, page: built });
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  try {
    context.setDefaultTimeout(1000 * longest);
    await context.request.get(served.newAddress());
    const page = await context.newPage();
    await page.addInitScript(watchLongTasks);
    const began = performance.now();
    await page.goto(`http://127.0.0.1:${served.port}/`);
    await page.locator('.grid-body [role=row]').first().waitFor();
    const toTable = performance.now() - began;
    await page.locator('.grid-body .outcome').first().waitFor();
    const toFirstResult = performance.now() - began;
    const scrolledMeanwhile = await scrolled(page);
    const settled = await page
      .locator('.title-bar .verdict-line .outcome')
      .waitFor({ timeout: 1000 * longest })
      .then(() => (performance.now() - began) / 1000)
      .catch(() => undefined);
    const whileWorking = await blocked(page);
    const put = page.getByRole('button', { name: 'Put away' });
    if (await put.isVisible()) await put.click();
    const afterwards = await scrolled(page);
    const memory = await page.evaluate(() => performance.memory.usedJSHeapSize);
    return {
      points: text.points,
      toTable: rounded(toTable),
      toFirstResult: rounded(toFirstResult),
      secondsToAll: settled === undefined ? `not within ${longest}` : rounded(settled),
      blockedMost: whileWorking.most,
      blockedOver50: whileWorking.count,
      frameWhileWorking: scrolledMeanwhile.p95,
      frameAfter: afterwards.p95,
      pageMiB: rounded(memory / 2 ** 20),
      load: loadavg()[0],
    };
  } finally {
    await context.close();
    await served.close();
    rmSync(folder, { recursive: true });
  }
}

/** Runs in the page: tasks that kept it from answering for more than 50 ms. */
function watchLongTasks() {
  globalThis.longTasks = [];
  new PerformanceObserver((list) => {
    for (const each of list.getEntries()) globalThis.longTasks.push(each.duration);
  }).observe({ type: 'longtask', buffered: true });
}

async function blocked(page) {
  const tasks = await page.evaluate(() => globalThis.longTasks.splice(0));
  return { count: tasks.length, most: rounded(Math.max(0, ...tasks)) };
}

/** What lies between frames while the table runs by, a screen a frame. */
async function scrolled(page) {
  const gaps = await page.evaluate(
    (frames) =>
      new Promise((done) => {
        const box = document.querySelector('.grid-body').parentElement;
        const found = [];
        let last;
        const frame = (now) => {
          if (last !== undefined) found.push(now - last);
          last = now;
          box.scrollTop = (box.scrollTop + 400) % Math.max(1, box.scrollHeight - box.clientHeight);
          if (found.length < frames) requestAnimationFrame(frame);
          else done(found);
        };
        requestAnimationFrame(frame);
      }),
    scrolls,
  );
  return spread(gaps);
}
