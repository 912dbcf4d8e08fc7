import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { openXlsx, saveXlsx } from 'hucre/xlsx';
import { beforeAll, expect, it } from 'vitest';
import { axeScript, axeViolations } from './accessibility.ts';
import { inBrowser } from './chromium.ts';
import { looked } from './looked.ts';
import { openedPage, phone, settled } from './opened-page.ts';
import { examplePlant } from './plants.ts';
import { type ServedPlant, servedPlant } from './served-plant.ts';

const root = resolve(import.meta.dirname, '../../..');
const workbookType = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
const loop = 'P-301/pump-drive-end-loop';

/** Issues the tables that come back, by the command, and gives the folder of the revision. */
function issued(served: ServedPlant, revision: string): string {
  const out = join(dirname(served.path), 'issued');
  const documents = 'instrument-list,cable-schedule,alarm-register';
  // A plant with something against it ends with 1; preliminary, its documents are written all the same.
  spawnSync(process.execPath, [
    join(root, 'packages/cli/bin/soundpost.js'),
    ...['issue', served.path, '--out', out, '--revision', revision, '--documents', documents],
    ...['--forms', 'xlsx,csv', '--preliminary'],
  ]);
  const folder = join(out, `revision-${revision}`);
  expect(existsSync(folder), 'it is issued').toBe(true);
  return folder;
}

/** The cable schedule of a revision with cells of the loop typed into, as a spreadsheet saves it. */
async function edited(folder: string, typed: Readonly<Record<string, string | number>>) {
  const book = await openXlsx(new Uint8Array(readFileSync(join(folder, 'cable-schedule.xlsx'))));
  const { rows } = book.sheets[0]!;
  const row = rows.findIndex((each) => String(each[0]).startsWith(loop));
  for (const [head, value] of Object.entries(typed)) rows[row]![rows[0]!.indexOf(head)] = value;
  return { name: 'cables edited.xlsx', mimeType: workbookType, buffer: Buffer.from(await saveXlsx(book)) };
}

inBrowser('a table that comes back while the plant went on', () => {
  // The set is issued by the built command.
  beforeAll(() => {
    spawnSync(process.execPath, [join(root, 'node_modules/typescript/bin/tsc'), '-b', 'packages/cli'], { cwd: root });
  }, 120_000);

  it('shows the conflict with all three values, takes it where a person lets the table hold, and not before', async () => {
    const text = examplePlant('raw-water-pump');
    await using served = await servedPlant(text);
    const folder = issued(served, 'A');
    const since = text.replace('value: 85 m', 'value: 87 m');
    served.write(since);
    await using opened = await openedPage(served, { at: '/issue', scripts: [axeScript] });
    const { page } = opened;
    await page
      .getByLabel('Edited table', { exact: true })
      .setInputFiles(await edited(folder, { 'Length, m': 90, 'Apart by': '300 mm', From: 'elsewhere' }));
    await page.getByText(/^1 understood, 1 in conflict, 1 refused/).waitFor();
    await page.getByText(/exported in revision A; the plant has changed since/).waitFor();
    const conflict = page.getByRole('row').filter({ hasText: 'in conflict, not taken' });
    const cells = await conflict.getByRole('cell').allTextContents();
    expect(cells.slice(0, 6)).toEqual(['F3', `${loop}/C1`, 'Length', '85', '90', '87']);
    await looked(page, 'conflict');

    await page.getByRole('button', { name: 'Take 1 change into the plant' }).waitFor();
    await page.getByRole('checkbox', { name: /^Let the table hold: 90 in place of 87/ }).check();
    await page.getByText(/0 in conflict, 1 refused, 1 decided for the table/).waitFor();
    expect(served.text()).toBe(since);
    await page.getByRole('button', { name: 'Take 2 changes into the plant' }).click();
    await expect.poll(() => served.text()).toContain('cable-length: 90 m');
    expect(served.text()).toContain('power-distance: 300 mm');
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => served.text()).toBe(since);
    expect(opened.violations).toEqual([]);
    expect(opened.alarms).toEqual([]);
  });

  it('on a phone is a card for each cell, wide as the screen, with its heads; it is still a table to who cannot see', async () => {
    const text = examplePlant('raw-water-pump');
    await using served = await servedPlant(text);
    const folder = issued(served, 'A');
    await using opened = await openedPage(served, { at: '/issue', size: phone, touch: true, scripts: [axeScript] });
    const { page } = opened;
    const file = await edited(folder, { 'Length, m': 90, 'Apart by': 'x'.repeat(3000), From: 'elsewhere' });
    await page.getByLabel('Edited table', { exact: true }).setInputFiles(file);
    await page.getByText(/^1 understood, 0 in conflict, 2 refused/).waitFor();
    const region = page.getByRole('region', { name: 'What was understood' });
    expect(await region.getByRole('table').getByRole('row').count()).toBe(4);
    expect(await region.getByRole('cell', { name: 'Edited to 90', exact: true }).count()).toBe(1);
    const boxes = await region
      .locator('tbody td')
      .evaluateAll((all) =>
        all.map((each) => ({ left: each.getBoundingClientRect().left, right: each.getBoundingClientRect().right })),
      );
    for (const { left, right } of boxes) {
      expect(left).toBeGreaterThanOrEqual(0);
      expect(right).toBeLessThanOrEqual(phone.width);
    }
    const heads = await region
      .locator('tbody td')
      .evaluateAll((all) => all.map((each) => getComputedStyle(each, '::before').content));
    expect(heads.slice(0, 3)).toEqual(['"Cell"', '"Row"', '"Column"']);
    expect(await axeViolations(page)).toEqual([]);
  });

  it('compares one revision with another, and leads from the difference to the points', async () => {
    const text = examplePlant('raw-water-pump');
    await using served = await servedPlant(text);
    issued(served, 'A');
    const second = text.replace('value: 85 m', 'value: 86 m').replace('mount: stud', 'mount: magnet-2pole');
    served.write(second);
    issued(served, 'B');
    served.write(text.replace('value: 85 m', 'value: 99 m'));
    await using opened = await openedPage(served, { at: '/issue' });
    const { page } = opened;
    const changed = page.getByRole('region', { name: 'What changed', exact: true });
    await changed.getByRole('combobox', { name: 'From' }).selectOption({ label: 'Revision A' });
    await changed.getByRole('combobox', { name: 'To' }).selectOption({ label: 'Revision B' });
    await changed.getByRole('button', { name: 'Compare' }).click();
    await changed.getByRole('heading', { name: 'From revision A to revision B' }).waitFor();
    const stated = changed.getByRole('region', { name: 'Stated otherwise' });
    expect(await stated.getByRole('row').count()).toBe(3);
    await stated.getByText('86 m', { exact: true }).waitFor();
    expect(await stated.getByText('99 m').count()).toBe(0);
    const tests = changed.getByRole('region', { name: 'Tests to be made again' });
    await tests.getByRole('link', { name: loop }).click();
    await page.waitForURL(/\/point\/P-301\/pump-drive-end-loop$/);
    await settled(page);
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toContain('pump-drive-end-loop');
    expect(opened.alarms).toEqual([]);
  });

  it('stops while what was issued is still fetched: nothing is compared, and it can be begun again', async () => {
    await using served = await servedPlant(examplePlant('raw-water-pump'));
    issued(served, 'A');
    await using opened = await openedPage(served, { at: '/issue' });
    const { page } = opened;
    let release = () => {};
    const held = new Promise<void>((settle) => {
      release = settle;
    });
    await page.route('**/stated', async (route) => {
      await held;
      await route.continue().catch(() => undefined);
    });
    const changed = page.getByRole('region', { name: 'What changed', exact: true });
    await changed.getByRole('button', { name: 'Compare' }).click();
    await changed.getByText('Comparing: reading what was issued…').waitFor();
    await changed.getByRole('button', { name: 'Stop' }).click();
    await changed.getByText(/^Comparing/).waitFor({ state: 'detached' });
    release();
    await page.waitForTimeout(1500);
    expect(await changed.getByRole('heading', { level: 3 }).count()).toBe(0);
    expect(await changed.getByRole('alert').count()).toBe(0);
    await page.unroute('**/stated');
    await changed.getByRole('button', { name: 'Compare' }).click();
    await page.getByText('both state the same; nothing that follows from it differs.').waitFor();
    expect(opened.alarms).toEqual([]);
  });
});
