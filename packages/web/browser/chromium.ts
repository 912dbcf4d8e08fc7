import { type Browser, chromium } from 'playwright-core';
import { describe, inject } from 'vitest';

let connected: Promise<Browser> | undefined;

/** The one browser of the run. */
export function browser(): Promise<Browser> {
  connected ??= chromium.connect(inject('browser'));
  return connected;
}

/** A suite that needs a browser; without one it is skipped. */
export function inBrowser(title: string, suite: () => void): void {
  describe.skipIf(inject('browser') === '')(title, suite);
}
