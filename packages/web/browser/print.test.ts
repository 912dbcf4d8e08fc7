import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { inBrowser } from './chromium.ts';
import { openedPage } from './opened-page.ts';
import { examplePlant } from './plants.ts';
import { servedPlant } from './served-plant.ts';

const pumps = Array.from({ length: 70 }, (_, index) => `P-${501 + index}`);

/** The raw-water pump once more under each of these names, its surfaces of unknown temperature. */
function manyPumps(): string {
  const text = examplePlant('raw-water-pump');
  const [before, block] = text.split('\nmachines:\n') as [string, string];
  const end = /^\S/m.exec(block)?.index ?? block.length;
  const own = block.slice(0, end).replaceAll(/surface-temperature: \{.*/g, 'surface-temperature: unknown');
  return `${before}\nmachines:\n${block.slice(0, end)}${pumps.map((name) => own.replaceAll('P-301', name)).join('')}${block.slice(end)}`;
}

/** What stands on the paper, as poppler's pdftotext reads it. */
async function onPaper(page: Page): Promise<string> {
  const pdf = await page.pdf({ format: 'A4', preferCSSPageSize: false });
  const folder = mkdtempSync(join(tmpdir(), 'soundpost-print-'));
  try {
    writeFileSync(join(folder, 'page.pdf'), pdf);
    return execFileSync('pdftotext', ['-layout', join(folder, 'page.pdf'), '-'], { encoding: 'utf8' });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const missing = (paper: string, names: readonly string[]) => names.filter((name) => !paper.includes(name));

inBrowser('what is printed', () => {
  it('holds every row, of which the screen holds a window', async () => {
    await using served = await servedPlant(manyPumps());
    await using opened = await openedPage(served);
    const { page } = opened;
    expect(await page.locator('.grid-row.point').count()).toBeLessThan(60);
    const points = await onPaper(page);
    expect(missing(points, ['P-301', ...pumps])).toEqual([]);
    expect(points.match(/ACC-100 +stud +TSP/g)).toHaveLength(71);
    expect(points).toContain('Brinewell Water, raw-water pump station 3');
    const counted = Number(await page.locator('#questions .quiet').textContent());
    expect(counted).toBeGreaterThan(70);
    expect(await page.locator('.questions li').count()).toBe(12);
    const questions = points.slice(points.indexOf('Open questions'));
    expect(missing(questions, pumps)).toEqual([]);
    expect(questions).not.toContain('Show all');
    // Afterwards the screen is what it was.
    await expect.poll(() => page.locator('.printed-points').count()).toBe(0);

    await opened.go('/findings');
    const told = (await page.locator('.findings > p').first().textContent())!;
    const findings = await onPaper(page);
    expect(findings.match(/^ *Found\b/gm)).toHaveLength(Number(/^\d+/.exec(told)![0]));
    expect(missing(findings, pumps)).toEqual([]);
    expect(findings).not.toContain('Arrow keys');

    await opened.go('/catalogue');
    const names = await page.locator('.entry-name').allTextContents();
    expect(names.length).toBeGreaterThan(30);
    const catalogue = await onPaper(page);
    expect(missing(catalogue, names)).toEqual([]);

    await opened.go('/catalogue/ACC-100');
    expect(missing(await onPaper(page), pumps)).toEqual([]);
    expect(opened.alarms).toEqual([]);
    expect(opened.violations).toEqual([]);
  });

  it('is told apart where only some points are listed', async () => {
    await using served = await servedPlant(examplePlant('raw-water-pump'));
    await using opened = await openedPage(served, { at: '/?words=loop', look: 'dark' });
    const paper = await onPaper(opened.page);
    expect(paper).toContain('Only points that fit are listed: loop.');
    expect(paper).not.toMatch(/ACC-100 +stud/);
  });
});
