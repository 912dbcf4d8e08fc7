import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { axeScript, axeViolations } from './accessibility.ts';
import { inBrowser } from './chromium.ts';
import { desk, openedPage, phone, settled, sideways } from './opened-page.ts';
import { examplePlant, horizontal, loop } from './plants.ts';
import { servedPlant } from './served-plant.ts';

const views = [
  ['raw-water-pump', '/'],
  ['raw-water-pump', '/machine/P-301'],
  ['raw-water-pump', '/findings'],
  ['raw-water-pump', '/workings'],
  ['raw-water-pump', '/workings/mounted-response'],
  ['raw-water-pump', '/catalogue'],
  ['raw-water-pump', '/catalogue/ACC-100'],
  ['raw-water-pump', '/no-such-view'],
] as const;

/** The points whose sheets say most, with the sheets; every sheet of the first. */
const points = [
  ['raw-water-pump', horizontal, undefined],
  ['raw-water-pump', loop, ['The loop', 'Alarms']],
  ['hydrogen-compressor', '/point/C-201B/rod-drop-1', ['Hazardous area']],
  ['turbo-compressor', '/point/K-11/bearing-1', ['Probes']],
] as const;

inBrowser('every view', () => {
  it.each(views)(
    '%s %s: nothing against it in light and dark, on the desk and on the phone',
    async (plant, address) => {
      await using served = await servedPlant(examplePlant(plant));
      await using opened = await openedPage(served, { scripts: [axeScript], at: address });
      await inEveryLook(opened.page, async (look) => {
        expect(await axeViolations(opened.page), look).toEqual([]);
      });
      expect(opened.foreign).toEqual([]);
      expect(opened.violations).toEqual([]);
      expect(opened.alarms).toEqual([]);
    },
  );

  it.each(points)(
    '%s %s: nothing against any sheet of it, in light and dark, on the desk and on the phone',
    async (plant, address, told) => {
      await using served = await servedPlant(examplePlant(plant));
      await using opened = await openedPage(served, { scripts: [axeScript], at: address });
      const { page } = opened;
      await inEveryLook(page, async (look) => {
        expect(await axeViolations(page), look).toEqual([]);
      });
      const titles = told ?? (await page.getByRole('tab').allTextContents()).slice(1);
      for (const title of titles) {
        await page.getByRole('tab', { name: title, exact: true }).click();
        await settled(page);
        await inEveryLook(page, async (look) => {
          expect(await axeViolations(page, '[role=tabpanel][data-state=active]'), `${title}, ${look}`).toEqual([]);
        });
      }
      expect(opened.foreign).toEqual([]);
      expect(opened.violations).toEqual([]);
      expect(opened.alarms).toEqual([]);
    },
  );
});

async function inEveryLook(page: Page, judge: (look: string) => Promise<void>): Promise<void> {
  for (const size of [desk, phone]) {
    await page.setViewportSize(size);
    expect(await sideways(page), `scrolls sideways at ${size.width} px`).toEqual([]);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      await judge(`${colorScheme} at ${size.width} px`);
    }
  }
}
