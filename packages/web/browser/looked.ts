import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { axeViolations } from './accessibility.ts';
import { desk, phone, settled, sideways } from './opened-page.ts';

const tablet = { width: 1024, height: 768 };

/** Nothing against the page as it stands at three sizes, light and dark; with SHOTS in the environment it is pictured. */
export async function looked(page: Page, name: string): Promise<void> {
  for (const size of [desk, tablet, phone]) {
    await page.setViewportSize(size);
    expect(await sideways(page)).toEqual([]);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      await settled(page);
      expect(await axeViolations(page), `${colorScheme} ${size.width}`).toEqual([]);
      const shots = process.env.SHOTS;
      if (shots !== undefined) {
        await page.screenshot({ path: join(shots, `${name}-${colorScheme}-${size.width}.png`), fullPage: true });
      }
    }
  }
  await page.setViewportSize(desk);
  await page.emulateMedia({ colorScheme: 'light' });
}
