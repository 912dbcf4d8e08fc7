import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { commands, inMemory, manner, performed } from '@soundpost/commands';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { inBrowser } from './chromium.ts';
import { openedPage, settled } from './opened-page.ts';
import { examplePlant, horizontal, loop, pumpWithoutChains } from './plants.ts';
import { servedPlant } from './served-plant.ts';

inBrowser('a pump designed by hand', () => {
  it('comes to the same record as the plant file written by hand', async () => {
    await using served = await servedPlant(pumpWithoutChains('pump-drive-end-horizontal', 'pump-drive-end-loop'));
    await using opened = await openedPage(served, { at: horizontal });
    const { page } = opened;
    expect(await page.locator('.point-verdict').textContent()).toMatch(/^○ no chain/);
    await begun(page, {
      transducer: 'ACC-100',
      mount: 'magnet-2pole',
      cable: 'TSP',
      input: 'PORT-24',
      length: '2 m',
    });
    await expect.poll(() => page.locator('.point-verdict').textContent()).toMatch(/^✗ fails/);
    await page.getByRole('combobox', { name: 'Mount' }).selectOption('stud');
    await page.getByRole('button', { name: 'Keep in the file' }).click();
    await expect.poll(() => page.locator('.point-verdict').textContent()).toMatch(/^✓ meets/);
    await expect.poll(() => page.locator('.saving').textContent()).toBe('In the file');

    await page.getByRole('link', { name: 'Points' }).first().click();
    await settled(page);
    await opened.go(loop);
    await begun(page, {
      transducer: 'LPV-25',
      mount: 'stud',
      cable: 'TSP',
      input: 'AI-16',
      length: '85 m',
      inLine: 'LOOP-24',
    });
    await expect.poll(() => served.text()).toContain('LOOP-24');
    await expect.poll(() => page.locator('.saving').textContent()).toBe('In the file');
    expect(await proven(served.text())).toEqual(await proven(examplePlant('raw-water-pump')));
    expect(opened.alarms).toEqual([]);
  });
});

async function begun(page: Page, chain: Record<string, string>): Promise<void> {
  const form = page.locator('form', { has: page.getByRole('heading', { name: 'Begin a chain' }) });
  for (const place of ['transducer', 'mount', 'cable', 'input']) {
    await form.getByRole('combobox', { name: place, exact: true }).selectOption(chain[place]!);
  }
  await form.getByLabel('cable length').fill(chain.length!);
  if (chain.inLine !== undefined)
    await form.getByRole('combobox', { name: 'in the line, first' }).selectOption(chain.inLine);
  await form.getByRole('button', { name: 'Begin with this chain' }).click();
}

/** What the command line makes of a plant. */
async function proven(text: string): Promise<unknown> {
  const generic = readFileSync(resolve(import.meta.dirname, '../../files/catalogues/generic.yaml'), 'utf8');
  const files = inMemory({ 'plant.yaml': text, 'house/packages/files/catalogues/generic.yaml': generic });
  const prove = commands.find((each) => each.name === 'prove')!;
  const { json, exit } = await performed(prove, files, { plant: 'plant.yaml' }, manner());
  expect(exit).toBe(0);
  return json;
}
