import { expect, it } from 'vitest';
import { inBrowser } from './chromium.ts';
import { openedPage, phone, settled, sideways } from './opened-page.ts';
import { examplePlant } from './plants.ts';
import { servedPlant } from './served-plant.ts';

const script = '<script>alert(1)<img src=x onerror=alert(2)><svg onload=alert(3)>';
/** As long as the reader lets a text and a key be. */
const longText = `${script} ${'x'.repeat(1900)}`;
const longKey = 'y'.repeat(80);
const machine = `M ${script}`;
/** A name that is read from right to left. */
const point = `${script} מסב ימני`;

/** The pump with names that would do something if a page let them. */
function hostilePlant(): string {
  const quoted = JSON.stringify;
  const replaced: readonly (readonly [string, string])[] = [
    ['  name: Brinewell Water, raw-water pump station 3', `  name: ${quoted(longText)}`],
    ['  owner: Brinewell Water', `  owner: ${quoted(script)}`],
    ['\n  P-301:', `\n  ${quoted(machine)}:`],
    ['title: Raw-water pump on a variable-speed drive', `title: ${quoted(longText)}`],
    ['pump-drive-end-horizontal:', `${quoted(point)}:`],
    ['pump-drive-end-loop:', `${quoted(longKey)}:`],
    ['location: pump, drive-end bearing housing', `location: ${quoted(longText)}`],
    ['cause: hydraulic load, wear of the impeller', `cause: ${quoted(longText)}`],
    ['          vane pass:', `          ${quoted(`${script} zzzz`)}:`],
  ];
  return replaced.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`the example has no ${from} any more`);
    return text.replace(from, () => to);
  }, examplePlant('raw-water-pump'));
}

inBrowser('names that mean harm', () => {
  it.each([
    ['turn the text about them', `P\u202E${script}`],
    ['turn the text about them, written as an escape', '"P\\u202E"'],
    ['are ten thousand characters long', 'x'.repeat(10_000)],
  ])('and %s are refused by the reader, and the page tells so without harm', async (_, name) => {
    const text = examplePlant('raw-water-pump').replace(
      'name: Brinewell Water, raw-water pump station 3',
      `name: ${name}`,
    );
    await using served = await servedPlant(text);
    await using opened = await openedPage(served);
    expect(await opened.page.getByRole('alert').textContent()).toContain('plant.yaml:6:');
    expect(await sideways(opened.page)).toEqual([]);
    expect(await opened.page.evaluate(() => document.body.textContent.includes('\u202E'))).toBe(false);
    expect(opened.alarms).toEqual([]);
  });

  it('do nothing, and push nothing off the page', async () => {
    const text = hostilePlant();
    await using served = await servedPlant(text);
    await using opened = await openedPage(served);
    const { page } = opened;
    const here = encodeURIComponent(machine);
    for (const address of [
      '/',
      `/machine/${here}`,
      `/point/${here}/${encodeURIComponent(point)}`,
      '/findings',
      `/catalogue/${encodeURIComponent(script)}`,
      `/workings/${encodeURIComponent(script)}`,
      `/point/${encodeURIComponent(script)}/${encodeURIComponent('\u202E')}`,
    ]) {
      await opened.go(address);
      const refused = await page.locator('.unreadable').allTextContents();
      expect(refused, address).toEqual([]);
      expect(await sideways(page), address).toEqual([]);
      await page.setViewportSize(phone);
      expect(await sideways(page), address).toEqual([]);
    }
    await opened.go(`/point/${here}/${encodeURIComponent(point)}`);
    expect(await page.locator('h1').textContent()).toBe(point);
    for (const tab of await page.getByRole('tab').all()) {
      await tab.click();
      await settled(page);
      expect(await sideways(page), String(await tab.textContent())).toEqual([]);
    }
    expect(await page.evaluate(() => document.querySelectorAll('main script, img[src=x], svg[onload]').length)).toBe(0);
    expect(opened.alarms).toEqual([]);
    expect(opened.violations).toEqual([]);
    expect(opened.foreign).toEqual([]);
  });
});
