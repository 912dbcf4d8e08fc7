import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, expect, it } from 'vitest';
import { axeScript } from './accessibility.ts';
import { inBrowser } from './chromium.ts';
import { looked } from './looked.ts';
import { openedPage } from './opened-page.ts';
import { examplePlant, horizontal, loop } from './plants.ts';
import { servedPlant } from './served-plant.ts';

const root = resolve(import.meta.dirname, '../../..');
const at = `${horizontal}/rehearsal`;

const hash = (path: string) => createHash('sha256').update(readFileSync(path)).digest('hex');
const status = (page: Page) => page.locator('.start [role=status]');

async function spalled(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Put in a fault' }).click();
  await page.getByRole('combobox', { name: 'Fault', exact: true }).selectOption('outer-ring');
  await page.getByRole('combobox', { name: 'At', exact: true }).selectOption('pump-drive-end');
  await page.getByLabel('Length, s').fill('2');
}

/** The file of an ending that a button takes away; others may come with it. */
async function taken(page: Page, button: string, ending: string): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'soundpost-taken-'));
  const file = page.waitForEvent('download', (each) => each.suggestedFilename().endsWith(ending));
  await page.getByRole('button', { name: button }).first().click();
  const path = join(folder, (await file).suggestedFilename());
  await (await file).saveAs(path);
  return path;
}

inBrowser('a rehearsal', () => {
  beforeAll(() => {
    spawnSync(process.execPath, [join(root, 'node_modules/typescript/bin/tsc'), '-b', 'packages/cli'], { cwd: root });
  }, 120_000);

  it('without its server and by key alone: two chains side by side, and the samples of the command', async () => {
    await using served = await servedPlant(examplePlant('raw-water-pump'));
    await using opened = await openedPage(served, { at });
    const { page, context } = opened;
    const asked = opened.requests.length;
    await context.setOffline(true);
    await spalled(page);
    const start = page.getByRole('button', { name: 'Rehearse', exact: true });
    await start.focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => status(page).textContent(), { timeout: 60_000 }).toBe('Rehearsed.');
    const lines = page.getByRole('region', { name: /^Bearings in the envelope/ }).first();
    expect(await lines.getByRole('row', { name: /pump-drive-end\/outer-ring.*seen, 4 of 4/ }).count()).toBe(1);
    expect(opened.requests.slice(asked).filter((each) => /^(POST|PUT)/.test(each))).toEqual([]);
    const wav = await taken(page, 'WAV and its facts', '.wav');
    const made = mkdtempSync(join(tmpdir(), 'soundpost-made-'));
    const path = join(made, 'made.wav');
    const command = join(root, 'packages/cli/bin/soundpost.js');
    execFileSync(process.execPath, [
      command,
      'rehearse',
      join(root, 'examples/raw-water-pump/plant.yaml'),
      'pump-drive-end-horizontal',
      ...['--seconds', '2', '--fault', 'outer-ring:pump-drive-end:1 g peak', '--out', path],
    ]);
    expect(hash(wav)).toBe(hash(path));
    rmSync(made, { recursive: true });
    expect(opened.alarms).toEqual([]);
    expect(opened.violations).toEqual([]);
  });

  it('cancelled, leaves nothing, and another can be begun', async () => {
    await using served = await servedPlant(examplePlant('raw-water-pump'));
    await using opened = await openedPage(served, { at });
    const { page } = opened;
    await page.getByLabel('Length, s').fill('20');
    await page.getByRole('button', { name: 'Rehearse', exact: true }).click();
    await page.getByRole('button', { name: 'Cancel' }).click();
    await expect.poll(() => status(page).textContent()).toBe('Cancelled. Nothing was rehearsed.');
    expect(await page.getByRole('heading', { name: 'What an analyst sees' }).count()).toBe(0);
    await page.getByLabel('Length, s').fill('1');
    await page.getByRole('button', { name: 'Rehearse', exact: true }).click();
    await expect.poll(() => status(page).textContent(), { timeout: 60_000 }).toBe('Rehearsed.');
  });

  it('refused, says what and what would do', async () => {
    await using served = await servedPlant(examplePlant('raw-water-pump'));
    await using opened = await openedPage(served, { at });
    const { page } = opened;
    await page.getByLabel('Seed').fill('one');
    await page.getByRole('button', { name: 'Rehearse', exact: true }).click();
    await expect.poll(() => status(page).textContent()).toMatch(/seed one.*a number above 0/);
  });

  it('sounds only when asked to, and stops', async () => {
    await using served = await servedPlant(examplePlant('raw-water-pump'));
    await using opened = await openedPage(served, { at });
    const { page } = opened;
    await page.getByLabel('Length, s').fill('6');
    await page.getByLabel('Samples a second').fill('10240');
    await page.getByRole('button', { name: 'Rehearse', exact: true }).click();
    await expect.poll(() => status(page).textContent(), { timeout: 90_000 }).toBe('Rehearsed.');
    const play = page.getByRole('button', { name: /^Play the motion itself/ });
    expect(await page.getByRole('button', { pressed: true }).count()).toBe(0);
    await play.click();
    await page.getByRole('button', { name: /^Stop the motion itself/ }).click();
    await play.waitFor();
    expect(opened.alarms).toEqual([]);
  });

  it('of a loop shows what the card makes of it; nothing against either in every size, light and dark', async () => {
    await using served = await servedPlant(examplePlant('raw-water-pump'));
    await using opened = await openedPage(served, { at, scripts: [axeScript] });
    const { page } = opened;
    await spalled(page);
    await page.getByLabel('Send the same motion through a second chain').check();
    await page.getByRole('combobox', { name: 'transducer', exact: true }).selectOption('PVT-4');
    for (const address of [at, `${loop}/rehearsal`]) {
      if (address !== at) {
        await opened.go(address);
        await page.getByLabel('Length, s').fill('2');
      }
      await page.getByRole('button', { name: 'Rehearse', exact: true }).click();
      await expect.poll(() => status(page).textContent(), { timeout: 60_000 }).toBe('Rehearsed.');
      await looked(page, `rehearsal-${address === at ? 'two' : 'loop'}`);
    }
    expect(await page.getByText('Counts of the card').count()).toBe(1);
    expect(opened.violations).toEqual([]);
  });
});
