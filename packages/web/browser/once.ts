import { existsSync } from 'node:fs';
import { chromium } from 'playwright-core';
import type { TestProject } from 'vitest/node';
import { builtPage } from './built-page.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the browser listens; empty where none was found. */
    browser: string;
    /** The folder of the built page. */
    page: string;
  }
}

const places = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** Once for all of these tests: the page is built and one browser started. Both are gone afterwards. */
export default async function once(project: TestProject): Promise<() => Promise<void>> {
  const executablePath = places.find((each) => each !== undefined && existsSync(each));
  if (executablePath === undefined) {
    process.stderr.write('The browser tests are skipped: no Chromium was found. CHROMIUM can name one.\n');
    project.provide('browser', '');
    project.provide('page', '');
    return async () => {};
  }
  const page = await builtPage();
  const browser = await chromium.launchServer({ executablePath, args: ['--no-sandbox'], host: '127.0.0.1' });
  project.provide('browser', browser.wsEndpoint());
  project.provide('page', page.folder);
  return async () => {
    await browser.close();
    page.remove();
  };
}
