import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { inBrowser } from './chromium.ts';
import { openedPage } from './opened-page.ts';
import { examplePlant, horizontal } from './plants.ts';
import { servedPlant } from './served-plant.ts';

inBrowser('a measuring point under the hand', () => {
  it.each([
    ['Transducer', 'sensitivity'],
    ['Cable', 'length'],
  ])('a drag in the box %s of its %s turns the verdict without asking the server', async (box, number) => {
    await using served = await servedPlant(
      examplePlant('raw-water-pump').replace('cable-length: 2 m', 'cable-length: 100 m'),
    );
    await using opened = await openedPage(served, { at: horizontal });
    const { page, requests } = opened;
    await page
      .locator('.box', { has: page.getByRole('heading', { name: box }) })
      .getByRole('button', { name: /^Move/ })
      .click();
    const before = await told(page);
    const asked = requests.length;
    const slider = page.getByRole('slider', { name: number, exact: true });
    await dragged(page, slider, 1);
    expect(before.verdict).toMatch(/^✓ meets/);
    await expect.poll(async () => (await told(page)).verdict).toMatch(/^✗ fails/);
    expect((await told(page)).chart).not.toBe(before.chart);
    expect(requests.slice(asked)).toEqual([]);
    await page.getByRole('button', { name: 'Put all back' }).click();
    await expect.poll(() => told(page)).toEqual(before);
    expect(requests.slice(asked)).toEqual([]);
  });

  it('a motor on a converter is run by its line frequency, and told so', async () => {
    await using served = await servedPlant(examplePlant('raw-water-pump'));
    await using opened = await openedPage(served, { at: horizontal });
    const slider = opened.page.getByRole('slider', { name: 'line frequency of motor, held' });
    expect(await slider.getAttribute('aria-valuetext')).toBe('25 Hz to 50 Hz, as stated');
    const { chart } = await told(opened.page);
    await slider.fill('0');
    await expect.poll(() => slider.getAttribute('aria-valuetext')).toBe('25 Hz');
    await expect.poll(async () => (await told(opened.page)).chart).not.toBe(chart);
  });

  it('another mount turns a target; kept it is in the file, undone the file has the bytes it had', async () => {
    const text = examplePlant('raw-water-pump');
    await using served = await servedPlant(text);
    await using opened = await openedPage(served, { at: horizontal });
    const { page } = opened;
    await page.getByRole('combobox', { name: 'Mount' }).selectOption('magnet-2pole');
    await expect.poll(async () => (await told(page)).verdict).toMatch(/^✗ fails/);
    await expect.poll(() => page.locator('.judgements').textContent()).toContain('was meets');
    expect(served.text()).toBe(text);
    await page.getByRole('button', { name: 'Keep in the file' }).click();
    const kept = text.replace('mount: stud', 'mount: magnet-2pole');
    await expect.poll(() => served.text()).toBe(kept);
    await page.reload();
    await expect.poll(async () => (await told(page)).verdict).toMatch(/^✗ fails/);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => served.text()).toBe(text);
    await expect.poll(async () => (await told(page)).verdict).toMatch(/^✓ meets/);
    await page.getByRole('button', { name: 'Redo' }).click();
    await expect.poll(() => served.text()).toBe(kept);
  });
});

async function told(page: Page) {
  const chart = await page
    .locator('.chart svg')
    .first()
    .evaluate((svg) => svg.outerHTML);
  return {
    verdict: await page.locator('.point-verdict').textContent(),
    chart,
    judged: await page.locator('.judgements tbody').allTextContents(),
  };
}

/** Takes the knob of a slider and moves it to a part of its way, in steps. */
async function dragged(page: Page, slider: ReturnType<Page['getByRole']>, to: number): Promise<void> {
  await slider.scrollIntoViewIfNeeded();
  const { x, y, width, height } = (await slider.boundingBox())!;
  await page.mouse.move(x + width / 2, y + height / 2);
  await page.mouse.down();
  await page.mouse.move(x + width * to - 2, y + height / 2, { steps: 8 });
  await page.mouse.up();
}
