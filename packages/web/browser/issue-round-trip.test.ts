import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { beforeAll, expect, it } from 'vitest';
import { axeScript } from './accessibility.ts';
import { inBrowser } from './chromium.ts';
import { looked } from './looked.ts';
import { openedPage } from './opened-page.ts';
import { examplePlant } from './plants.ts';
import { servedPlant } from './served-plant.ts';

const root = resolve(import.meta.dirname, '../../..');

inBrowser('what was issued, against now and back', () => {
  // The set is issued by a process of its own, which runs as it is built.
  beforeAll(() => {
    spawnSync(process.execPath, [join(root, 'node_modules/typescript/bin/tsc'), '-b', 'packages/cli'], { cwd: root });
  }, 120_000);

  it('takes an edited table back after it was looked at, undoes it to the byte, and tells what it changed', async () => {
    const text = examplePlant('raw-water-pump');
    await using served = await servedPlant(text);
    await using opened = await openedPage(served, { at: '/issue', scripts: [axeScript] });
    const { page } = opened;
    await page.getByRole('textbox', { name: 'Folder beside the plant' }).fill('sent');
    for (const form of ['PDF', 'XLSX', 'SVG', 'HTML']) {
      await page.getByRole('checkbox', { name: new RegExp(`^${form} `) }).uncheck();
    }
    await page.getByRole('button', { name: 'Issue revision A' }).click();
    await page.getByText('Issued.', { exact: true }).waitFor();
    const csv = join(dirname(served.path), 'sent/revision-A/tables/cable-schedule/cables.csv');
    const exported = readFileSync(csv, 'utf8');
    const line = exported.split(/\r?\n/).find((each) => each.includes('pump-drive-end-loop'))!;
    expect(line).toMatch(/,85,/);

    const table = page.getByLabel('Edited table', { exact: true });
    const edited = exported.replace(line, line.replace(',85,', ',900,'));
    await table.setInputFiles({ name: 'cables.csv', mimeType: 'text/csv', buffer: Buffer.from(edited) });
    await page.getByText(/^1 understood/).waitFor();
    await page.getByRole('combobox', { name: 'Exported from' }).selectOption('revision-A');
    const understood = page.getByRole('region', { name: 'What was understood' });
    await understood.getByText('900', { exact: true }).waitFor();
    expect(served.text()).toBe(text);
    await looked(page, 'import');
    await page.getByRole('button', { name: 'Take 1 change into the plant' }).click();
    await expect.poll(() => served.text()).toContain('900 m');

    await page.getByRole('button', { name: 'Compare' }).click();
    const changed = page.getByRole('region', { name: 'What changed', exact: true });
    await changed.getByRole('region', { name: 'Stated otherwise' }).getByText('900 m').waitFor();
    await changed
      .getByRole('region', { name: 'Tests to be made again' })
      .getByRole('link', { name: 'P-301/pump-drive-end-loop' })
      .waitFor();
    await changed.getByRole('region', { name: 'Sheets to be issued again' }).getByText('[1]').first().waitFor();
    await looked(page, 'difference');

    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => served.text()).toBe(text);
    await page.getByText('The plant was changed since this was compared. Compare again.').waitFor();
    await page.getByRole('button', { name: 'Compare' }).click();
    await page.getByText('both state the same; nothing that follows from it differs.').waitFor();
    expect(opened.violations).toEqual([]);
    expect(opened.alarms).toEqual([]);
  });

  it('takes nothing from a table it does not know, and says what is missing', async () => {
    await using served = await servedPlant(examplePlant('raw-water-pump'));
    await using opened = await openedPage(served, { at: '/issue' });
    const { page } = opened;
    const buffer = Buffer.from('Fruit;Weight\npear;3\n');
    await page
      .getByLabel('Edited table', { exact: true })
      .setInputFiles({ name: 'fruit.csv', mimeType: 'text/csv', buffer });
    await page
      .getByRole('alert')
      .getByText(/no table is known by its heads/)
      .waitFor();
    expect(await page.getByRole('button', { name: /into the plant/ }).count()).toBe(0);
  });

  it('asks before the page is left while a set is issued', async () => {
    await using served = await servedPlant(examplePlant('raw-water-pump'));
    await using opened = await openedPage(served, { at: '/issue' });
    const { page } = opened;
    await page.getByRole('button', { name: 'Issue revision A' }).click();
    await page.getByRole('button', { name: 'Cancel' }).waitFor();
    const asked = page.waitForEvent('dialog');
    await page.close({ runBeforeUnload: true });
    expect((await asked).type()).toBe('beforeunload');
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.getByText(/^Cancelled/).waitFor();
  });
});
