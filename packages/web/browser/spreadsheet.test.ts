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
});
