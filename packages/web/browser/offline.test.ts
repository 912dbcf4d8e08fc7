import { expect, it } from 'vitest';
import { inBrowser } from './chromium.ts';
import { openedPage } from './opened-page.ts';
import { examplePlant, horizontal } from './plants.ts';
import { servedPlant } from './served-plant.ts';

inBrowser('a page whose server is gone', () => {
  it('works on, says that nothing is saved, and saves once a server is back', async () => {
    const text = examplePlant('raw-water-pump');
    await using served = await servedPlant(text);
    await using opened = await openedPage(served, { at: horizontal });
    const { page, context } = opened;
    const verdict = () => page.locator('.point-verdict').textContent();
    const saving = () => page.locator('.saving').textContent();
    await context.setOffline(true);
    await served.stop();

    await page
      .getByRole('button', { name: /^Move \d+ number/ })
      .first()
      .click();
    await page.getByRole('slider', { name: 'surface temperature' }).fill('0.5');
    await expect.poll(verdict).toMatch(/^✗ fails/);
    await page.getByRole('button', { name: 'Put all back' }).click();
    await expect.poll(verdict).toMatch(/^✓ meets/);

    await page.getByRole('combobox', { name: 'Mount' }).selectOption('magnet-2pole');
    await page.getByRole('button', { name: 'Keep in the file' }).click();
    await expect.poll(saving).toMatch(/^Not saved/);
    expect(await verdict()).toMatch(/^✗ fails/);
    expect(served.text()).toBe(text);

    // The server that comes back knows nobody; whoever started it opens the address it prints.
    await served.start();
    await context.setOffline(false);
    await expect.poll(saving, { timeout: 8000 }).toMatch(/^Not saved: the server was started anew/);
    await context.request.get(served.address());
    await expect.poll(() => served.text(), { timeout: 8000 }).toBe(text.replace('mount: stud', 'mount: magnet-2pole'));
    await expect.poll(saving).toBe('In the file');
    expect(opened.alarms).toEqual([]);
  });
});
