import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';
import { describe } from 'vitest';

const places = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
const found = places.find((each) => each !== undefined && existsSync(each));

let launched: Promise<Browser> | undefined;

/** One browser for every test of the run; it ends with the process that started it. */
export function browser(): Promise<Browser> {
  launched ??= chromium.launch({ executablePath: found!, args: ['--no-sandbox'] });
  return launched;
}

/** A suite that needs a browser; without one it is skipped, and says so. */
export function inBrowser(title: string, suite: () => void): void {
  if (found === undefined) {
    process.stderr.write(`Skipped, because no Chromium was found (set CHROMIUM to its path): ${title}\n`);
  }
  describe.skipIf(found === undefined)(title, suite);
}
