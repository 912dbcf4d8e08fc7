import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, inject, it } from 'vitest';
import { inBrowser } from './chromium.ts';
import { openedPage } from './opened-page.ts';
import { examplePlant, horizontal } from './plants.ts';
import { servedPlant } from './served-plant.ts';

/** Kilobytes of script, as gzip sends it, before the first chart. The aim is 250; this may only become smaller. */
const most = 365;

inBrowser('the script that is loaded before the first chart', () => {
  it('does not grow', async () => {
    await using served = await servedPlant(examplePlant('raw-water-pump'));
    await using opened = await openedPage(served, { at: horizontal, scripts: [watchFirstChart] });
    const before = await opened.page.evaluate(() => (globalThis as unknown as { loaded: string[] }).loaded);
    const workers = readdirSync(join(inject('page'), 'assets')).filter((name) => /^engine-worker-.*\.js$/.test(name));
    expect(before.length).toBeGreaterThan(0);
    expect(workers).toHaveLength(1);
    const names = new Set([...before.map((each) => each.split('/').at(-1)!), ...workers]);
    const bytes = [...names].map((name) => gzipSync(readFileSync(join(inject('page'), 'assets', name))).length);
    expect(bytes.reduce((sum, each) => sum + each, 0) / 1000).toBeLessThan(most);
  });
});

/** Runs in the page: the scripts it had loaded when the chart stood there. */
const watchFirstChart = `
  new MutationObserver((_, watch) => {
    if (document.querySelector('.chart svg') === null) return;
    watch.disconnect();
    globalThis.loaded = performance.getEntriesByType('resource').map((each) => each.name).filter((name) => name.endsWith('.js'));
  }).observe(document, { childList: true, subtree: true });
`;
