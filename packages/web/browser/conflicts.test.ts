import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { axeScript, axeViolations } from './accessibility.ts';
import { inBrowser } from './chromium.ts';
import { openedPage, settled } from './opened-page.ts';
import { examplePlant, horizontal, loop } from './plants.ts';
import { servedPlant } from './served-plant.ts';

const text = examplePlant('raw-water-pump');
const mount = (name: string) => text.replace('mount: stud', `mount: ${name}`);
const detection = (of: string) => of.replace('detection: 10 dB', 'detection: 12 dB');

inBrowser('a plant file that others change too', () => {
  it('what another program writes appears on the page by itself', async () => {
    await using served = await servedPlant(text);
    await using opened = await openedPage(served, { at: horizontal });
    served.write(mount('magnet-2pole'));
    await expect.poll(() => opened.page.locator('.point-verdict').textContent()).toMatch(/^✗ fails/);
    await expect.poll(() => chosenMount(opened.page)).toBe('magnet-2pole');
  });

  it('changes of different values both stand, whoever heard of the other or not', async () => {
    await using served = await servedPlant(text);
    await using opened = await openedPage(served, { at: horizontal, deaf: true });
    served.write(detection(text));
    await keptMount(opened.page, 'magnet-2pole');
    await expect.poll(() => served.text()).toBe(detection(mount('magnet-2pole')));
    expect(await opened.page.getByRole('alert').count()).toBe(0);
  });

  it('of two changes of one value the one in the file stands, and the other is shown until it was looked at', async () => {
    await using served = await servedPlant(text);
    await using opened = await openedPage(served, { at: horizontal, deaf: true, scripts: [axeScript] });
    const { page } = opened;
    served.write(mount('quick-lock'));
    await keptMount(page, 'magnet-2pole');
    const conflict = page.getByRole('alert', { name: 'Conflicts' });
    await conflict.waitFor();
    const row = conflict.getByRole('row').nth(1);
    expect(await row.getByRole('cell').allTextContents()).toEqual([
      'machines / P-301 / points / pump-drive-end-horizontal / chain / mount',
      'magnet-2pole',
      'quick-lock',
    ]);
    expect(served.text()).toBe(mount('quick-lock'));
    await expect.poll(() => chosenMount(page)).toBe('quick-lock');
    expect(await axeViolations(page)).toEqual([]);
    await conflict.getByRole('button').click();
    expect(await conflict.count()).toBe(0);
  });

  it('what one tab keeps the other shows', async () => {
    await using served = await servedPlant(text);
    await using one = await openedPage(served, { at: horizontal });
    await using other = await openedPage(served, { at: horizontal, context: one.context });
    await keptMount(one.page, 'magnet-2pole');
    await expect.poll(() => chosenMount(other.page)).toBe('magnet-2pole');
    expect(await other.page.getByRole('alert').count()).toBe(0);
  });

  it('two tabs on one plant both end with what either changed', async () => {
    await using served = await servedPlant(text);
    await using one = await openedPage(served, { at: horizontal });
    await using other = await openedPage(served, { at: loop, context: one.context });
    await Promise.all([keptMount(one.page, 'magnet-2pole'), keptMount(other.page, 'quick-lock')]);
    const both = mount('magnet-2pole').replace(/mount: stud/, 'mount: quick-lock');
    await expect.poll(() => served.text()).toBe(both);
    for (const [opened, here, there] of [
      [one, 'magnet-2pole', 'quick-lock'],
      [other, 'quick-lock', 'magnet-2pole'],
    ] as const) {
      await expect.poll(() => opened.page.locator('.saving').textContent()).toBe('In the file');
      await expect.poll(() => chosenMount(opened.page)).toBe(here);
      await opened.page.getByRole('link', { name: 'Points' }).first().click();
      await settled(opened.page);
      await expect.poll(() => opened.page.locator('main').textContent()).toContain(there);
    }
  });
});

async function keptMount(page: Page, name: string): Promise<void> {
  await page.getByRole('combobox', { name: 'Mount' }).selectOption(name);
  await page.getByRole('button', { name: 'Keep in the file' }).click();
}

function chosenMount(page: Page): Promise<string> {
  return page.getByRole('combobox', { name: 'Mount' }).inputValue();
}
