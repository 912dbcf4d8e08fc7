import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { axeScript, axeViolations } from './accessibility.ts';
import { inBrowser } from './chromium.ts';
import { openedPage, settled } from './opened-page.ts';
import { examplePlant, horizontal, loop } from './plants.ts';
import { servedPlant } from './served-plant.ts';

/** Shows a sheet of the view. */
async function sheet(page: Page, title: string): Promise<void> {
  await page.getByRole('tab', { name: title, exact: true }).click();
  await settled(page);
}

/** What stands in the open depths: title, sentence, numbers, formulas and sources. */
async function depths(page: Page) {
  const told = page.getByRole('dialog').locator('.told').first();
  await told.waitFor();
  const texts = async (selector: string) => told.locator(selector).allTextContents();
  return {
    title: await told.locator('h3').textContent(),
    sentence: (await texts('p'))[0],
    numbers: await texts('dl div'),
    heads: await texts('h4'),
    formulas: await texts('.steps math'),
    sources: (await texts('.cited li')).join('; '),
    all: (await told.textContent()) ?? '',
  };
}

async function closed(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
}

inBrowser('every number opens in three depths', () => {
  it('a set point, with the pointer: why it stands there, from which numbers, by which formula, by whom', async () => {
    await using served = await servedPlant(examplePlant('raw-water-pump'));
    await using opened = await openedPage(served, { scripts: [axeScript], at: loop });
    const { page } = opened;
    await sheet(page, 'Alarms');
    await page
      .getByRole('row', { name: /^alert/ })
      .first()
      .getByRole('button')
      .first()
      .click();
    const told = await depths(page);
    expect(told.title).toBe('Alert');
    // The sheet of the page stands above that of the documents, whichever was loaded first.
    expect(await page.locator('.told h3').evaluate((each) => getComputedStyle(each).borderTopWidth)).toBe('0px');
    expect(told.sentence).toContain('baseline');
    expect(told.heads).toEqual(['The numbers', 'How it comes about', 'Whose it is']);
    expect(told.numbers.join()).toContain('boundary B/C');
    expect(told.formulas.some((each) => each.includes('min'))).toBe(true);
    expect(told.sources).toContain('ISO');
    expect(await axeViolations(page, '.why-sheet')).toEqual([]);
    await closed(page);
    expect(await page.evaluate(() => document.activeElement?.matches('button[data-opens]'))).toBe(true);
    expect(opened.alarms).toEqual([]);
  });

  it('a setting and a line of a budget, with the keys alone', async () => {
    await using served = await servedPlant(examplePlant('raw-water-pump'));
    await using opened = await openedPage(served, { at: horizontal });
    const { page } = opened;
    await sheet(page, 'Acquisition');
    await page.getByRole('tab', { name: 'Acquisition', exact: true }).focus();
    const first = page.locator('[role=tabpanel][data-state=active] button[data-opens]').first();
    for (let press = 0; press < 20 && !(await isFocused(page)); press++) await page.keyboard.press('Tab');
    expect(await first.evaluate((each) => each === document.activeElement)).toBe(true);
    await page.keyboard.press('Enter');
    const highest = await depths(page);
    expect(highest.title).toContain('Highest frequency');
    expect(highest.all).toContain('1, 2, 5');
    await closed(page);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    expect((await depths(page)).title).toContain('Lines of the');
    await closed(page);
    await sheet(page, 'Uncertainty of the readings');
    const table = page.getByRole('table', { name: /^Contributions/ }).first();
    await table.getByRole('button').first().focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press(' ');
    const budget = await depths(page);
    expect(budget.formulas.length).toBeGreaterThan(1);
    expect(budget.all).toContain('standard uncertainty');
    expect(budget.sources).toContain('JCGM 100');
    await closed(page);
    expect(opened.alarms).toEqual([]);
  });

  it('a frequency of the table: the formula of the bearing with its numbers, and the way to its calculator', async () => {
    await using served = await servedPlant(examplePlant('raw-water-pump'));
    await using opened = await openedPage(served, { scripts: [axeScript], at: '/machine/P-301' });
    const { page } = opened;
    await sheet(page, 'Frequencies');
    const row = page.getByRole('row', { name: /pump-drive-end\/.*outer-ring/ }).last();
    await row.getByRole('button').nth(1).click();
    const told = await depths(page);
    expect(told.title).toContain('outer-ring');
    expect(told.formulas.length).toBeGreaterThan(3);
    expect(await axeViolations(page, '.why-sheet')).toEqual([]);
    await page.getByRole('link', { name: 'Work it with other numbers' }).click();
    await expect.poll(() => page.url()).toContain('/workings/rolling-bearing-frequencies');
    expect(opened.alarms).toEqual([]);
  });

  it('a cell of the table of points, a value under the hand, a margin of the shortlist', async () => {
    await using served = await servedPlant(examplePlant('raw-water-pump'));
    await using opened = await openedPage(served);
    const { page } = opened;
    await page.locator('.point-grid .of-covered button').first().click();
    expect((await depths(page)).title).toBe('Targets covered');
    await closed(page);
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    expect((await depths(page)).all).toContain('margin');
    await closed(page);
    await opened.go(horizontal);
    await page.locator('.number-hand output button').first().click();
    const typed = await depths(page);
    expect(typed.all).toContain('It was typed');
    expect(typed.all).toContain('stands at');
    await closed(page);
    await page.locator('.shortlist td.number button').first().click();
    expect((await depths(page)).heads).toHaveLength(3);
    await closed(page);
    expect(opened.alarms).toEqual([]);
  });
});

function isFocused(page: Page): Promise<boolean> {
  return page.evaluate(() => document.activeElement?.matches('button[data-opens]') === true);
}
