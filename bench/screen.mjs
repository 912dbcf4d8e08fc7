import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { workbench } from '@soundpost/server';
import { chromium } from 'playwright-core';
import { pump, pumpPoint, wideCatalogue } from './plants.mjs';
import { rounded, spread } from './spread.mjs';

const built = process.env.SOUNDPOST_PAGE ?? resolve(import.meta.dirname, '../packages/web/dist');
const places = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
const moves = 120;
const openings = 5;
/** Milliseconds until a page has come to rest. */
const settling = 600;
/** Milliseconds after which an input is taken to leave the picture as it was; and so many of them in a row end it. */
const unanswered = 500;
const patience = 30;

/**
 * What a hand on the workbench waits for, in headless Chromium: from the input event to the painted picture, with the
 * processor as it is and slowed down four times; the first picture; the script that is loaded before it.
 */
export async function measured() {
  const executablePath = places.find((each) => each !== undefined && existsSync(each));
  if (executablePath === undefined) return { notRun: 'no Chromium was found; CHROMIUM can name one' };
  if (!existsSync(join(built, 'index.html'))) return { notRun: 'the page is not built; run `npm run build` first' };
  const folder = mkdtempSync(join(tmpdir(), 'soundpost-bench-'));
  const [plant, catalogue] = [join(folder, 'plant.yaml'), join(folder, 'generic.yaml')];
  writeFileSync(plant, pump());
  writeFileSync(catalogue, wideCatalogue(400));
  const served = await workbench({ plant, port: 0, genericCatalogue: catalogue, page: built });
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] });
  try {
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
    await context.request.get(served.newAddress());
    const address = `http://127.0.0.1:${served.port}/point/${pumpPoint}`;
    const first = await firstPictures(context, address);
    const rows = {};
    for (const slowed of [1, 4]) {
      for (const [hand, found] of await dragged(context, address, slowed)) rows[`${hand}, ${slowed} ×`] = found;
    }
    return {
      browser: `Chromium ${browser.version()}`,
      unit: `ms from the input event to the painted picture, ${moves} moves each`,
      firstPicture: first,
      rows,
    };
  } finally {
    await browser.close();
    await served.close();
    rmSync(folder, { recursive: true });
  }
}

/** From asking for the page until the chart is painted, and what script had been loaded by then, as gzip would send it. */
async function firstPictures(context, address) {
  const [durations, scripts] = [[], new Set()];
  for (let opening = 0; opening < openings; opening++) {
    const page = await context.newPage();
    const cdp = await context.newCDPSession(page);
    await cdp.send('Network.setCacheDisabled', { cacheDisabled: true });
    await page.addInitScript(watchFirstPicture);
    const loaded = [];
    context.on('request', (request) => {
      const { pathname } = new URL(request.url());
      if (pathname.endsWith('.js')) loaded.push({ name: pathname.split('/').at(-1), at: Date.now() });
    });
    await page.goto(address);
    await page.waitForFunction(() => globalThis.firstPicture !== undefined);
    const { since, until } = await page.evaluate(() => globalThis.firstPicture);
    durations.push(until);
    for (const { name, at } of loaded) if (at < since + until) scripts.add(name);
    context.removeAllListeners('request');
    await page.close();
  }
  const gzipped = (name) => gzipSync(readFileSync(join(built, 'assets', name)), { level: 9 }).length;
  const names = readdirSync(join(built, 'assets')).filter((name) => scripts.has(name));
  const kB = Object.fromEntries(names.map((name) => [name, rounded(gzipped(name) / 1000)]));
  return { ms: spread(durations), scriptBefore: { kB: rounded(sum(Object.values(kB))), of: kB } };
}

/** Runs in the page. */
function watchFirstPicture() {
  const watch = new MutationObserver(() => {
    if (document.querySelector('.chart svg') === null) return;
    watch.disconnect();
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => {
        globalThis.firstPicture = { since: performance.timeOrigin, until: performance.now() };
      };
      port2.postMessage(undefined);
    });
  });
  watch.observe(document, { childList: true, subtree: true });
}

async function dragged(context, address, slowed) {
  const page = await context.newPage();
  await page.goto(address);
  await page.waitForFunction(() => document.querySelector('.title-bar .verdict-line .outcome') !== null);
  await putWalkAway(page);
  await page.locator('.box', { hasText: 'ACC-100' }).getByRole('button', { name: /^Move/ }).click();
  await page.waitForTimeout(settling);
  await page.evaluate(watchPictures);
  const cdp = await context.newCDPSession(page);
  await cdp.send('Performance.enable', { timeDomain: 'threadTicks' });
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: slowed });
  const slider = (name) => page.getByRole('slider', { name, exact: true });
  const hands = {
    sensitivity: (row) => slid(page, slider('sensitivity'), row),
    'cable length': (row) => slid(page, slider('length'), row),
    speed: (row) => slid(page, page.locator('.speed-hand input'), row),
    mount: (row) => swapped(page.getByRole('combobox', { name: 'Mount' }), row),
  };
  const found = [];
  for (const [name, hand] of Object.entries(hands)) {
    const row = (act) => watched(page, cdp, act, `${name.replace(' ', '-')}-${slowed}`);
    found.push([name, await hand(row).catch((error) => ({ notMeasured: String(error.message).split('\n')[0] }))]);
  }
  await page.close();
  return found;
}

/** The walk of a first visit lies over the foot of the page, and over whatever is scrolled there. */
async function putWalkAway(page) {
  const put = page.getByRole('button', { name: 'Put away' });
  if (await put.isVisible()) await put.click();
}

/** A slider taken by the mouse and moved there and back, a picture waited for after each move. */
async function slid(page, slider, row) {
  await slider.evaluate((each) => each.scrollIntoView({ block: 'center' }));
  const { x, y, width, height } = await slider.boundingBox();
  const middle = y + height / 2;
  const at = (move) => x + width * (0.5 + 0.4 * Math.sin((2 * Math.PI * move) / 60));
  const hit = await slider.evaluate(
    (each, [left, top]) => document.elementFromPoint(left, top) === each,
    [at(0), middle],
  );
  if (!hit) throw new Error('something lies over the slider');
  await page.mouse.move(at(0), middle);
  await page.mouse.down();
  await page.waitForTimeout(settling);
  const found = await row((move) => page.mouse.move(at(move + 1), middle));
  await page.mouse.up();
  const back = page.getByRole('button', { name: 'Put all back' });
  if (await back.isEnabled()) await back.click();
  await page.waitForTimeout(settling);
  return found;
}

async function swapped(select, row) {
  const names = await select.locator('option').evaluateAll((all) => all.map((each) => each.value));
  return row((move) => select.selectOption(names[(move + 1) % names.length]));
}

/**
 * Moves, each with its picture: a picture is a change of the chart, and there is none where a shorter cable draws the
 * same curves. Where the pictures stay away the row ends and says so.
 */
async function watched(page, cdp, act, name) {
  await page.evaluate(() => globalThis.pictures.splice(0));
  const profiles = process.env.SOUNDPOST_PROFILES;
  if (profiles !== undefined) {
    await cdp.send('Profiler.enable');
    await cdp.send('Profiler.start');
  }
  const before = await cost(cdp);
  let [inputs, without] = [0, 0];
  for (let move = 0; move < moves && without < patience; move++) {
    const past = await page.evaluate(() => ({ heard: globalThis.inputsHeard, pictures: globalThis.pictures.length }));
    await act(move);
    // A hand that has gone less than a step of the slider is not heard, and nothing answers it.
    const heard = await page.evaluate(
      () => new Promise((told) => requestAnimationFrame(() => told(globalThis.inputsHeard))),
    );
    if (heard === past.heard) continue;
    inputs++;
    const drawn = await page
      .waitForFunction((then) => globalThis.pictures.length > then, past.pictures, { timeout: unanswered, polling: 5 })
      .then(() => true)
      .catch(() => false);
    without = drawn ? 0 : without + 1;
    if (!drawn) await page.evaluate(() => globalThis.forgetInput());
    await page.waitForTimeout(Math.round(3 + 20 * Math.abs(Math.sin(move * move))));
  }
  const after = await cost(cdp);
  if (profiles !== undefined) {
    const { profile } = await cdp.send('Profiler.stop');
    writeFileSync(join(profiles, `${name}.cpuprofile`), JSON.stringify(profile));
  }
  const taken = await page.evaluate(() => globalThis.pictures);
  if (taken.length === 0) throw new Error(`no picture answered ${inputs} inputs`);
  return {
    ...spread(taken.map((each) => each.painted - each.heard)),
    sinceHardware: spread(taken.map((each) => each.painted - each.happened)).p95,
    drawn: spread(taken.map((each) => each.drawn - each.heard)).p95,
    pageThread: rounded((1000 * (after - before)) / inputs),
    inputs,
    pictures: taken.length,
    load: loadavg()[0],
  };
}

/** Seconds the main thread of the page has worked. */
async function cost(cdp) {
  const { metrics } = await cdp.send('Performance.getMetrics');
  return metrics.find((each) => each.name === 'TaskDuration').value;
}

/** Runs in the page: each input with the picture that answers it, and when the picture was painted. */
function watchPictures() {
  globalThis.pictures = [];
  globalThis.inputsHeard = 0;
  globalThis.forgetInput = () => {
    waiting = undefined;
  };
  let waiting;
  let last;
  const hear = (event) => {
    // One move of a list or a slider may be told twice, as input and as change.
    if (event.timeStamp !== last) globalThis.inputsHeard++;
    last = event.timeStamp;
    waiting ??= { happened: event.timeStamp, heard: performance.now() };
  };
  document.addEventListener('input', hear, { capture: true });
  document.addEventListener('change', hear, { capture: true });
  const painted = () => {
    if (waiting === undefined) return;
    const input = { ...waiting, drawn: performance.now() };
    waiting = undefined;
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => globalThis.pictures.push({ ...input, painted: performance.now() });
      port2.postMessage(undefined);
    });
  };
  new MutationObserver(painted).observe(document.querySelector('.chart .amplitude'), {
    childList: true,
    subtree: true,
    attributes: true,
    characterData: true,
  });
}

const sum = (values) => values.reduce((total, each) => total + each, 0);
