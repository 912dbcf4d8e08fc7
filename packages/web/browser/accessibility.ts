import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

/** To be put into a page before its own scripts: the policy of the page lets no script be added later. */
export const axeScript = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe has against the page as it stands: rule, and the elements it is of; a part of it by its selector. */
export async function axeViolations(page: Page, part = 'html'): Promise<string[]> {
  const { violations } = await page.evaluate((asked) => {
    const { axe } = globalThis as unknown as { axe: { run(part: string, options: object): Promise<Found> } };
    return axe.run(asked, { resultTypes: ['violations'] });
  }, part);
  return violations.map(
    ({ id, nodes }) =>
      `${id}: ${nodes.map(({ html, failureSummary }) => `${html.slice(0, 160)} — ${failureSummary}`).join('\n   ')}`,
  );
}

interface Found {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
  }[];
}
