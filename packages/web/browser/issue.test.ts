import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { beforeAll, expect, it } from 'vitest';
import { axeScript, axeViolations } from './accessibility.ts';
import { inBrowser } from './chromium.ts';
import { looked } from './looked.ts';
import { openedPage } from './opened-page.ts';
import { examplePlant } from './plants.ts';
import { servedPlant } from './served-plant.ts';

const root = resolve(import.meta.dirname, '../../..');

const filesIn = (folder: string): ReadonlyMap<string, string> =>
  new Map(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((each) => each.isFile())
      .map((each) => join(each.parentPath, each.name))
      .sort()
      .map((path) => [path.slice(folder.length + 1), readFileSync(path).toString('base64')]),
  );

inBrowser('issue of documents', () => {
  // The set is issued by a process of its own, which runs as it is built.
  beforeAll(() => {
    spawnSync(process.execPath, [join(root, 'node_modules/typescript/bin/tsc'), '-b', 'packages/cli'], {
      cwd: root,
    });
  }, 120_000);

  it('from the page gives the same bytes as the command', async () => {
    await using served = await servedPlant(examplePlant('raw-water-pump'));
    await using opened = await openedPage(served, { at: '/issue', scripts: [axeScript] });
    const { page } = opened;
    const issue = page.getByRole('button', { name: 'Issue revision A' });
    await issue.focus();
    await page.keyboard.press('Enter');
    await page.getByText('Issued.', { exact: true }).waitFor();
    const folder = join(dirname(served.path), 'issued');
    const out = mkdtempSync(join(tmpdir(), 'soundpost-issued-'));
    const command = join(root, 'packages/cli/bin/soundpost.js');
    execFileSync(process.execPath, [command, 'issue', served.path, '--out', out]);
    expect(filesIn(folder)).toEqual(filesIn(out));
    rmSync(out, { recursive: true });
    await page.getByText(/^Revision A, /).click();
    await page.getByRole('link', { name: 'instrument-list.pdf', exact: true }).waitFor();
    await page.getByRole('button', { name: 'Issue revision B' }).waitFor();
    expect(await axeViolations(page)).toEqual([]);
    expect(opened.violations).toEqual([]);
    expect(opened.alarms).toEqual([]);
  });

  it('cancelled, leaves nothing half done', async () => {
    await using served = await servedPlant(examplePlant('raw-water-pump'));
    await using opened = await openedPage(served, { at: '/issue' });
    const { page } = opened;
    await page.getByRole('button', { name: 'Issue revision A' }).click();
    await page.getByText(/^[1-9]\d* of \d+ documents done/).waitFor();
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.getByText(/^Cancelled/).waitFor();
    const folder = join(dirname(served.path), 'issued');
    await expect.poll(() => (existsSync(folder) ? readdirSync(folder) : [])).toEqual([]);
  });

  it('shows each sheet before it is issued; nothing against it on the desk and on the phone, light and dark', async () => {
    await using served = await servedPlant(examplePlant('raw-water-pump'));
    await using opened = await openedPage(served, { at: '/issue', scripts: [axeScript] });
    const { page } = opened;
    await page.getByRole('button', { name: /^Look at .*Loop diagrams$/ }).click();
    await page.locator('.preview svg').first().waitFor();
    await looked(page, 'issue');
  });
});
