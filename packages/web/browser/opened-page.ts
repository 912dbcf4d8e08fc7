import type { BrowserContext, Page } from 'playwright-core';
import { browser } from './chromium.ts';
import type { ServedPlant } from './served-plant.ts';

export const desk = { width: 1440, height: 900 };
export const phone = { width: 390, height: 844 };

export interface Opening {
  readonly size?: { readonly width: number; readonly height: number };
  readonly look?: 'light' | 'dark';
  /** Whether it is held by fingers. */
  readonly touch?: boolean;
  readonly scripts?: readonly string[];
  /** Where to go first; the plant otherwise. */
  readonly at?: string;
  /** Whether it hears nothing of what others do to the file. */
  readonly deaf?: boolean;
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
    (await (
      await browser()
    ).newContext({
      viewport: { ...size },
      colorScheme: look,
      reducedMotion: 'reduce',
      ...(opening.touch === true ? { hasTouch: true, isMobile: true } : {}),
    }));
  context.setDefaultTimeout(30_000);
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
  if (opening.deaf === true) await page.route('**/api/changes', (route) => route.abort());
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

/** Until the whole plant is worked out and the view waits for nothing, or the plant is told to be unreadable. */
export async function settled(page: Page): Promise<void> {
  try {
    await page.waitForFunction(() => {
      if (document.querySelector('.unreadable') !== null) return true;
      const view = document.querySelector('main');
      const worked = document.querySelector('.title-bar .verdict-line .outcome') !== null;
      return worked && view !== null && view.textContent !== '' && view.querySelector('.waiting') === null;
    });
  } catch {
    const words = await page.locator('main').allTextContents();
    throw new Error(`${page.url()} does not settle; it shows: ${words.join('').slice(0, 300)}`);
  }
}

/** What makes the page itself wider than the screen; a table may scroll in its own box. */
export function sideways(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    if (scrollWidth <= clientWidth) return [];
    const wide = [...document.body.querySelectorAll('*')].filter((each) => {
      const scrolls = each.closest('[class~=pushed], [style*=overflow]');
      return scrolls === null && each.getBoundingClientRect().right > clientWidth + 1;
    });
    return [`${scrollWidth} px`, ...wide.slice(-3).map((each) => each.outerHTML.slice(0, 120))];
  });
}

/** Runs in the page. */
function watchViolations(): void {
  const told = (globalThis as unknown as { toldViolation(words: string): void }).toldViolation;
  document.addEventListener('securitypolicyviolation', (event) => {
    told(`${event.violatedDirective} ${event.blockedURI} at ${location.pathname}`);
  });
}
