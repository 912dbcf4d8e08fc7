import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, expect, it } from 'vitest';
import { axeScript, axeViolations } from './accessibility.ts';
import { inBrowser } from './chromium.ts';
import { looked } from './looked.ts';
import { openedPage } from './opened-page.ts';
import { examplePlant } from './plants.ts';
import { servedPlant } from './served-plant.ts';

const root = resolve(import.meta.dirname, '../../..');
const example = join(root, 'examples/acceptance');
const all = [
  join(example, 'records.yaml'),
  ...readdirSync(join(example, 'records')).map((each) => join(example, 'records', each)),
];

const status = (page: Page) => page.locator('.start [role=status]');
const choose = (page: Page, files: readonly string[]) => page.locator('.drop input').setInputFiles([...files]);
const measured = (page: Page) =>
  expect.poll(() => status(page).textContent(), { timeout: 50_000 }).toBe('Measured and compared.');

inBrowser('an acceptance', () => {
  beforeAll(() => {
    spawnSync(process.execPath, [join(root, 'node_modules/typescript/bin/tsc'), '-b', 'packages/cli'], { cwd: root });
  }, 120_000);

  it('of a records file, without the server: the verdicts and the hashes of the command; nothing leaves the machine', async () => {
    await using served = await servedPlant(examplePlant('acceptance'));
    await using opened = await openedPage(served, { at: '/acceptance', scripts: [axeScript] });
    const { page, context } = opened;
    const before = opened.requests.length;
    await context.setOffline(true);
    await choose(page, all);
    await page.getByRole('button', { name: 'Measure and compare' }).click();
    await measured(page);
    expect(opened.requests.slice(before).filter((each) => /^(POST|PUT)/.test(each))).toEqual([]);
    await context.setOffline(false);
    const command = join(root, 'packages/cli/bin/soundpost.js');
    const asked = [command, 'accept', join(example, 'plant.yaml'), join(example, 'records.yaml'), '--json'];
    const { stdout } = spawnSync(process.execPath, asked, { encoding: 'utf8', maxBuffer: 2 ** 28 });
    const told = JSON.parse(stdout) as {
      readonly points: readonly { readonly at: string; readonly verdict: string }[];
    };
    expect(told.points.length).toBeGreaterThan(3);
    for (const { at, verdict } of told.points) {
      const heading = page.getByRole('region', { name: at, exact: true }).getByRole('heading').first();
      expect(await heading.textContent(), at).toContain(verdict);
    }
    const hash = createHash('sha256')
      .update(readFileSync(join(example, 'records/healthy-running.wav')))
      .digest('hex');
    expect(await page.getByText(hash.slice(0, 16)).count()).toBeGreaterThan(0);
    const file = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Take the acceptance file away' }).click();
    const folder = mkdtempSync(join(tmpdir(), 'soundpost-accepted-'));
    await (await file).saveAs(join(folder, 'acceptance.html'));
    expect(readFileSync(join(folder, 'acceptance.html'), 'utf8').slice(0, 40)).toMatch(/<!doctype html>/i);
    rmSync(folder, { recursive: true });
    await looked(page, 'acceptance');
    expect(opened.alarms).toEqual([]);
    expect(opened.violations).toEqual([]);
  }, 150_000);

  it('of a recording alone asks what it does not say, and guesses nothing', async () => {
    await using served = await servedPlant(examplePlant('acceptance'));
    const at = '/point/F-11/fan-drive-end-horizontal/acceptance';
    await using opened = await openedPage(served, { at, scripts: [axeScript] });
    const { page } = opened;
    await choose(page, [join(example, 'records/healthy-stopped.wav')]);
    const start = page.getByRole('button', { name: 'Measure and compare' });
    await page.getByText(/^Say of healthy-stopped.wav/).waitFor();
    expect(await start.isDisabled()).toBe(true);
    await page.getByRole('combobox', { name: 'Made on which occasion' }).selectOption('stopped');
    await start.click();
    await measured(page);
    await page.getByRole('heading', { name: 'Asked, since nobody says it' }).waitFor();
    expect(await page.getByText(/unit of its numbers/).count()).toBeGreaterThan(0);
    expect(await page.locator('.check .outcome.meets').count()).toBe(0);
    await page.getByRole('textbox', { name: /^Unit of its numbers/ }).fill('V');
    await page.getByRole('textbox', { name: /^Gain/ }).fill('1');
    await page.getByRole('combobox', { name: /^Coupling/ }).selectOption('alternating');
    await start.click();
    await expect.poll(() => page.locator('.check .outcome.meets').count(), { timeout: 30_000 }).toBeGreaterThan(0);
    expect(await axeViolations(page)).toEqual([]);
    const shots = process.env.SHOTS;
    if (shots !== undefined) await page.screenshot({ path: join(shots, 'acceptance-form.png'), fullPage: true });
  });

  it('of a file that is no recording says so', async () => {
    await using served = await servedPlant(examplePlant('acceptance'));
    await using opened = await openedPage(served, { at: '/acceptance' });
    const { page } = opened;
    await page
      .locator('.drop input')
      .setInputFiles({ name: 'broken.wav', mimeType: 'audio/wav', buffer: Buffer.from('RIFF\0\0\0\0WAVE') });
    await page.getByText(/broken\.wav: ✗/).waitFor();
    expect(opened.alarms).toEqual([]);
  });
});
