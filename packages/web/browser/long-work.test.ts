import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { browser, inBrowser } from './chromium.ts';
import { manyPumps } from './plants.ts';
import { servedPlant } from './served-plant.ts';

inBrowser('a plant that takes long to work out', () => {
  it('shows results machine by machine, those in sight first; it is stopped and gone on with', async () => {
    const machines = 150;
    await using served = await servedPlant(manyPumps(machines));
    const context = await (await browser()).newContext({ viewport: { width: 1440, height: 900 } });
    try {
      await context.request.get(served.address());
      const page = await context.newPage();
      await page.goto(served.origin);
      const stop = page.getByRole('button', { name: /^Stop working/ });
      const seen = page.locator('.grid-body .outcome').first();
      await seen.waitFor();
      // The first results stand while most of the plant is still to be worked out.
      const then = await progress(page);
      expect(then.done).toBeLessThan(machines);
      await page.locator('.grid-scroll, [role=grid]').first().press('Control+End');
      await page
        .locator('[role=row]', { hasText: `P-${machines}` })
        .first()
        .waitFor();
      await page.locator('.grid-body .outcome').last().waitFor();
      expect((await progress(page)).done).toBeLessThan(machines);
      await stop.click();
      const goOn = page.getByRole('button', { name: /^Go on working/ });
      await goOn.waitFor();
      await expect.poll(() => page.locator('.verdict-line').textContent()).toMatch(/machines worked out/);
      const stopped = await restingProgress(page);
      expect(stopped.done).toBeLessThan(machines);
      await goOn.click();
      await expect.poll(async () => (await progress(page)).done, { timeout: 20_000 }).toBeGreaterThan(stopped.done);
    } finally {
      await context.close();
    }
  });
});

async function progress(page: Page): Promise<{ done: number }> {
  const words = (await page.locator('.verdict-line').textContent()) ?? '';
  const found = /^(\d+) of \d+ machines worked out/.exec(words);
  return { done: found === null ? (words.includes('read') ? 0 : Number.POSITIVE_INFINITY) : Number(found[1]) };
}

/** What the progress is once it no longer goes on. */
async function restingProgress(page: Page): Promise<{ done: number }> {
  let before = await progress(page);
  for (;;) {
    await page.waitForTimeout(1500);
    const now = await progress(page);
    if (now.done === before.done) return now;
    before = now;
  }
}
