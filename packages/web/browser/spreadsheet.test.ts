import { expect, it } from 'vitest';
import { parse } from 'yaml';
import { axeScript, axeViolations } from './accessibility.ts';
import { inBrowser } from './chromium.ts';
import { openedPage } from './opened-page.ts';
import { examplePlant } from './plants.ts';
import { servedPlant } from './served-plant.ts';

const heads = 'Machine;Point;Location;Direction;Installation;Transducer;Mount;Cable;Length [m];Input';
const rows = [
  heads,
  'P-301;motor-drive-end;motor, drive end;vertical;portable;ACC-100;stud;TSP;12;PORT-24',
  'P-301;pump-drive-end-loop;;;;;;;90;',
  'P-301;motor-other-end;motor, other end;vertical;portable;ACC-100000;stud;TSP;12;PORT-24',
];
/** As a spreadsheet copies them. */
const copied = rows.map((row) => row.replaceAll(';', '\t')).join('\r\n');

inBrowser('rows pasted from a spreadsheet', () => {
  it('are told before they are taken; what is refused stays out, and one step undoes them', async () => {
    const text = examplePlant('raw-water-pump');
    await using served = await servedPlant(text);
    await using opened = await openedPage(served, { scripts: [axeScript] });
    const { page, context } = opened;
    await context.grantPermissions(['clipboard-read', 'clipboard-write'], { origin: served.origin });
    await page.evaluate((table) => navigator.clipboard.writeText(table), copied);
    await page.keyboard.press('Control+v');
    const dialog = page.getByRole('dialog', { name: 'Paste a table of measuring points' });
    await expect.poll(() => dialog.getByRole('status').textContent()).toMatch(/^1 new, 1 changed, .*1 refused/);
    expect(served.text()).toBe(text);
    expect(await dialog.textContent()).toContain('ACC-100000');
    expect(await axeViolations(page)).toEqual([]);
    await dialog.getByRole('button', { name: /^Take 2 rows/ }).click();
    await dialog.waitFor({ state: 'detached' });
    await expect.poll(() => served.text()).not.toBe(text);
    const { points } = parse(served.text()).machines['P-301'];
    expect(points['motor-drive-end'].chain).toMatchObject({
      transducer: 'ACC-100',
      mount: 'stud',
      cable: 'TSP',
      'cable-length': '12 m',
      input: 'PORT-24',
    });
    expect(JSON.stringify(points['pump-drive-end-loop'].chain['cable-length'])).toContain('90 m');
    expect(points['motor-other-end']?.chain?.transducer).toBeUndefined();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => served.text()).toBe(text);
    expect(opened.alarms).toEqual([]);
  });

  it('go to the cell they are pasted at; what was said of the values that go is told, and the new ones say theirs', async () => {
    const text = examplePlant('raw-water-pump');
    await using served = await servedPlant(text);
    await using opened = await openedPage(served, { scripts: [axeScript] });
    const { page, context } = opened;
    await context.grantPermissions(['clipboard-read', 'clipboard-write'], { origin: served.origin });
    await page.locator('.of-cableLength').first().click();
    await page.evaluate((table) => navigator.clipboard.writeText(table), '3 m\tONL-24\n90 m\t');
    await page.keyboard.press('Control+v');
    const dialog = page.getByRole('dialog', { name: 'Paste a table of measuring points' });
    await expect.poll(() => dialog.getByRole('status').textContent()).toMatch(/^0 new, 2 changed/);
    expect(await dialog.getByRole('radio', { name: /^To P-301\/pump-drive-end-horizontal/ }).isChecked()).toBe(true);
    const loop = dialog.getByRole('row', { name: /pump-drive-end-loop/ });
    await expect.poll(() => loop.textContent()).toContain('was: measured, walked on the tray; now: nothing said of it');
    await expect.poll(() => dialog.textContent()).toContain('! Of 1 value the file says how it is known.');
    await dialog.getByRole('combobox', { name: 'Status' }).selectOption('drawing');
    await dialog.getByRole('textbox', { name: 'Source of these values' }).fill('cable list, sheet 4');
    await expect.poll(() => loop.textContent()).toContain('now: drawing, cable list, sheet 4');
    expect(await axeViolations(page)).toEqual([]);
    await dialog.getByRole('button', { name: /^Take 2 rows/ }).click();
    await dialog.waitFor({ state: 'detached' });
    await expect.poll(() => served.text()).not.toBe(text);
    const { points } = parse(served.text()).machines['P-301'];
    const origin = { status: 'drawing', source: 'cable list, sheet 4' };
    expect(points['pump-drive-end-horizontal'].chain).toMatchObject({
      'cable-length': { value: '3 m', ...origin },
      input: 'ONL-24',
    });
    expect(points['pump-drive-end-loop'].chain['cable-length']).toEqual({ value: '90 m', ...origin });
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => served.text()).toBe(text);

    await page.locator('[id$="-0"].select').first().click();
    const bar = page.getByRole('form', { name: 'Change the selected points' });
    await bar.getByRole('combobox', { name: 'Set' }).selectOption('cableLength');
    await bar.getByRole('textbox').fill('70 m');
    await bar.getByRole('button', { name: 'Preview…' }).click();
    const bulk = page.getByRole('dialog', { name: /^Set cable length of 2 points to 70 m/ });
    expect(await bulk.textContent()).toContain('was: measured, walked on the tray; now: nothing said of it');
    await bulk.getByRole('textbox', { name: 'Source of these values' }).fill('walked again');
    await bulk.getByRole('button', { name: /^Set cable length/ }).click();
    await bulk.waitFor({ state: 'detached' });
    await expect
      .poll(() => parse(served.text()).machines['P-301'].points['pump-drive-end-loop'].chain['cable-length'])
      .toEqual({ value: '70 m', source: 'walked again' });
    expect(opened.alarms).toEqual([]);
  });
});
