import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { commands, inMemory, manner, performed } from '@soundpost/commands';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { axeScript, axeViolations } from './accessibility.ts';
import { browser, inBrowser } from './chromium.ts';

const root = resolve(import.meta.dirname, '../../..');
const example = 'examples/acceptance';

/** The acceptance file of the example, made in memory. */
async function acceptanceFile(): Promise<string> {
  const text = (path: string) => new Uint8Array(readFileSync(join(root, path)));
  const records = readFileSync(join(root, example, 'records.yaml'), 'utf8').matchAll(/file: (\S+)/g);
  const paths = [...records].flatMap(([, file]) => [`${example}/${file}`, `${example}/${file}.json`]);
  const files = [`${example}/plant.yaml`, `${example}/records.yaml`, ...paths];
  const world = inMemory({
    ...Object.fromEntries(files.map((path) => [path, text(path)])),
    'house/packages/files/catalogues/generic.yaml': text('packages/files/catalogues/generic.yaml'),
  });
  const given = { plant: files[0], records: files[1], out: 'accepted.html', date: '2026-11-26' };
  const accept = commands.find(({ name }) => name === 'accept')!;
  await performed(accept, world, given, manner({}));
  return new TextDecoder().decode(world.files.get('accepted.html'));
}

inBrowser('the acceptance file', () => {
  let folder: string;
  let address: string;
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'soundpost-acceptance-'));
    const path = join(folder, 'accepted.html');
    writeFileSync(path, await acceptanceFile());
    address = pathToFileURL(path).href;
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it.each([
    [1440, 'light'],
    [1440, 'dark'],
    [390, 'light'],
    [390, 'dark'],
  ] as const)(
    '%s wide, %s: nothing for axe, nothing beside the page, nothing asked of a network',
    async (width, colorScheme) => {
      const context = await (await browser()).newContext({ viewport: { width, height: 844 }, colorScheme });
      try {
        const page = await context.newPage();
        const asked: string[] = [];
        page.on('request', (request) => asked.push(request.url()));
        await page.addInitScript(axeScript);
        await page.goto(address);
        expect(await axeViolations(page)).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
        expect(asked).toEqual([address]);
      } finally {
        await context.close();
      }
    },
  );

  it('is printed on A4 with every section and the place to sign', async () => {
    const context = await (await browser()).newContext();
    try {
      const page = await context.newPage();
      await page.goto(address);
      const pdf = await page.pdf({ preferCSSPageSize: true });
      const box = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf.toString('latin1'))!;
      // A4 in points, 1/72 inch: 210 mm by 297 mm.
      expect(Number(box[1])).toBeCloseTo((210 / 25.4) * 72, -1);
      expect(Number(box[2])).toBeCloseTo((297 / 25.4) * 72, -1);
    } finally {
      await context.close();
    }
  });
});
