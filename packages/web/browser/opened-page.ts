import type { BrowserContext, Page } from 'playwright-core';
import { browser } from './chromium.ts';
import type { ServedPlant } from './served-plant.ts';

export const desk = { width: 1440, height: 900 };
export const phone = { width: 390, height: 844 };

export interface Opening {
  readonly size?: { readonly width: number; readonly height: number };
  readonly look?: 'light' | 'dark';
  readonly scripts?: readonly string[];
  /** Where to go first; the plant otherwise. */
  readonly at?: string;
  /** One more tab of a browser that is open already. */
  readonly context?: BrowserContext;
}

/** A page of a served plant, and everything that went on in it which nobody asked for. */
export interface OpenedPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Every request, as method and address. */
  readonly requests: string[];
  /** Requests to any other host. */
  readonly foreign: string[];
  /** What the content security policy kept from happening. */
  readonly violations: string[];
  /** Errors nobody caught, and dialogs a script opened. */
  readonly alarms: string[];
  go(address: string): Promise<void>;
  [Symbol.asyncDispose](): Promise<void>;
}

export async function openedPage(served: ServedPlant, opening: Opening = {}): Promise<OpenedPage> {
  const { size = desk, look = 'light', scripts = [], at = '/' } = opening;
  const own = opening.context === undefined;
  const context =
    opening.context ??
    (await (await browser()).newContext({ viewport: { ...size }, colorScheme: look, reducedMotion: 'reduce' }));
  context.setDefaultTimeout(15_000);
  const page = await context.newPage();
  const requests: string[] = [];
  const foreign: string[] = [];
  const violations: string[] = [];
  const alarms: string[] = [];
  page.on('request', (request) => {
    requests.push(`${request.method()} ${request.url()}`);
    const { protocol, origin } = new URL(request.url());
    if (protocol !== 'data:' && protocol !== 'blob:' && origin !== served.origin) foreign.push(request.url());
  });
  page.on('pageerror', (error) => alarms.push(`error: ${error.message}`));
  page.on('dialog', (dialog) => {
    alarms.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  await page.exposeBinding('toldViolation', (_source, words: string) => {
    violations.push(words);
  });
  await page.addInitScript(watchViolations);
  for (const content of scripts) await page.addInitScript({ content });
  if (own) await context.request.get(served.address());
  await page.goto(served.origin + at);
  await settled(page);
  return {
    page,
    context,
    requests,
    foreign,
    violations,
    alarms,
    go: async (address) => {
      await page.goto(served.origin + address);
      await settled(page);
    },
    [Symbol.asyncDispose]: () => (own ? context.close() : page.close()),
  };
}

/** Until nothing in the view is still being worked out. */
export async function settled(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const view = document.querySelector('main, .unreadable');
    return view !== null && view.textContent !== '' && view.querySelector('.waiting') === null;
  });
}

/** Runs in the page. */
function watchViolations(): void {
  const told = (globalThis as unknown as { toldViolation(words: string): void }).toldViolation;
  document.addEventListener('securitypolicyviolation', (event) => {
    told(`${event.violatedDirective} ${event.blockedURI} at ${location.pathname}`);
  });
}
