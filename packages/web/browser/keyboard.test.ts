import type { Locator, Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { inBrowser } from './chromium.ts';
import { openedPage } from './opened-page.ts';
import { pumpWithoutChains } from './plants.ts';
import { servedPlant } from './served-plant.ts';

inBrowser('a keyboard and nothing else', () => {
  it('leads from the table of points to a chain that meets its targets, and back out of it', async () => {
    const text = pumpWithoutChains('pump-drive-end-horizontal');
    await using served = await servedPlant(text);
    await using opened = await openedPage(served);
    const { page } = opened;
    await tabbedTo(page, page.getByRole('grid', { name: 'Measuring points' }));
    await page.keyboard.press('Control+Home');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Control+Enter');
    await page.getByRole('heading', { name: 'Begin a chain' }).waitFor();
    for (const [label, part] of [
      ['transducer', 'ACC-100H'],
      ['mount', 'stud'],
      ['cable', 'TSP'],
      ['input', 'PORT-24'],
    ] as const) {
      await chosen(page, page.locator('form').getByRole('combobox', { name: label, exact: true }), part);
    }
    await tabbedTo(page, page.getByLabel('cable length'));
    await page.keyboard.type('2 m');
    await page.keyboard.press('Enter');
    await expect.poll(() => verdict(page)).toMatch(/^[✓!?✗] /);

    await chosen(page, page.getByRole('combobox', { name: 'Transducer' }), 'ACC-100');
    await tabbedTo(page, page.getByRole('button', { name: 'Keep in the file' }));
    await page.keyboard.press('Enter');
    await expect.poll(() => served.text()).toMatch(/transducer: "?ACC-100"?\n/);
    expect(await verdict(page)).toMatch(/^✓ meets/);

    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await expect.poll(() => served.text()).toBe(text);
    expect(opened.alarms).toEqual([]);
  });
});

const verdict = (page: Page) => page.locator('.point-verdict').textContent();

/** Tab by Tab until the wanted thing has the focus; whatever has it on the way is seen to have it. */
async function tabbedTo(page: Page, wanted: Locator): Promise<void> {
  await wanted.waitFor();
  for (let presses = 0; presses < 120; presses++) {
    const here = await page.evaluate(() => {
      const { activeElement } = document;
      if (activeElement === null || activeElement === document.body) return undefined;
      const { outlineStyle, boxShadow, borderColor } = getComputedStyle(activeElement);
      return { html: activeElement.outerHTML.slice(0, 100), outlineStyle, boxShadow, borderColor };
    });
    if (here !== undefined && here.outlineStyle === 'none' && here.boxShadow === 'none') {
      throw new Error(`what has the focus does not show it: ${here.html}`);
    }
    if (await wanted.evaluate((each) => each === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error('120 presses of Tab do not lead there');
}

/** Walks a list of choices with the arrows to the one wanted. */
async function chosen(page: Page, list: Locator, part: string): Promise<void> {
  await tabbedTo(page, list);
  const value = () => list.evaluate((each) => (each as HTMLSelectElement).value);
  await page.keyboard.press('Home');
  for (let presses = 0; presses < 60 && (await value()) !== part; presses++) await page.keyboard.press('ArrowDown');
  expect(await value()).toBe(part);
}
