import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { commands, inMemory, manner, performed } from '@soundpost/commands';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { axeScript, axeViolations } from './accessibility.ts';
import { inBrowser } from './chromium.ts';
import { openedPage } from './opened-page.ts';
import { servedPlant } from './served-plant.ts';

const head = [
  '# Nothing stands here yet',
  'soundpost: plant',
  'version: 1',
  'plant: { name: Lindow Works }',
  'catalogues: [generic]',
];
const empty = [...head, 'machines: {} # to come', ''].join('\n');

/** The same machine as somebody writes it. */
const written = `${head.join('\n')}
machines:
  P-7:
    title: Booster pump behind a gear
    facts: {}
    shafts: [motor, pump]
    elements:
      motor: { kind: induction-motor, on: motor, poles: 4, supply: mains, line-frequency: 50 Hz, rated-slip: 15 r/min }
      coupling: { kind: coupling, from: motor, to: gear, elements: 6 }
      gear-bearing:
        kind: rolling-bearing
        inner: gear
        outer: fixed
        elements: 9
        element-diameter: 20 mm
        pitch-diameter: 100 mm
        contact-angle: 0 deg
      gear-pair: { kind: gear-pair, from: gear, to: pump, driving-teeth: 40, driven-teeth: 20 }
      impeller: { kind: impeller, on: pump, vanes: 6 }
    operation: { shaft: motor, speed: 1480..1490 r/min, states: { duty: 1485 r/min } }
    plates: { motor: 1485 r/min }
    points: {}
`.replace('shafts: [motor, pump]', 'shafts: [motor, gear, pump]');

inBrowser('a machine built from an empty plant', () => {
  it('has the frequencies of the same machine written by hand, and is undone to the byte', async () => {
    await using served = await servedPlant(empty);
    await using opened = await openedPage(served, { scripts: [axeScript] });
    const { page } = opened;
    let steps = 0;
    const kept = async (act: () => Promise<unknown>) => {
      const before = served.text();
      await act();
      await expect.poll(() => served.text()).not.toBe(before);
      await expect.poll(() => page.locator('.saving').textContent()).toBe('In the file');
      steps++;
    };
    await page.getByRole('button', { name: 'Add a machine…' }).click();
    const form = page.getByRole('form', { name: 'Add a machine' });
    await form.getByLabel('Tag').fill('P-7');
    await form.getByLabel('What it is').fill('Booster pump behind a gear');
    await form.getByLabel('Its first shaft').fill('motor');
    await kept(() => form.getByRole('button', { name: 'Add the machine' }).click());
    await page.getByRole('heading', { name: 'P-7' }).waitFor();
    for (const shaft of ['gear', 'pump']) {
      const adding = page.getByRole('form', { name: 'Add a shaft' });
      await adding.getByLabel('A new shaft').fill(shaft);
      await kept(() => adding.getByRole('button').click());
    }
    const element = async (kind: string, name: string, shafts: Record<string, string>) => {
      const adding = page.getByRole('form', { name: 'Add an element' });
      await adding.getByLabel('A new element').selectOption(kind);
      await adding.getByLabel('called').fill(name);
      for (const [role, shaft] of Object.entries(shafts)) {
        await adding.getByRole('combobox', { name: role, exact: true }).selectOption(shaft);
      }
      await kept(() => adding.getByRole('button').click());
      await page.locator(`details[open] h3[title='${name}']`).waitFor();
    };
    const typed = async (name: string, value: string) => {
      const field = page.getByLabel(name, { exact: true });
      if ((await field.evaluate((each) => each.tagName)) === 'SELECT') {
        await kept(() => field.selectOption(value));
      } else {
        await field.fill(value);
        await kept(() => field.press('Enter'));
      }
    };
    await element('induction-motor', 'motor', { 'on shaft': 'motor' });
    await typed('poles of motor', '4');
    await typed('supply of motor', 'mains');
    await typed('line frequency of motor', '50 Hz');
    await typed('rated slip of motor', '15 r/min');
    await element('coupling', 'coupling', { from: 'motor', to: 'gear' });
    await typed('elements of coupling', '6');
    await element('rolling-bearing', 'gear-bearing', { inner: 'gear', outer: 'fixed' });
    await typed('elements of gear-bearing', '9');
    await typed('element diameter of gear-bearing', '20 mm');
    await typed('pitch diameter of gear-bearing', '100 mm');
    await typed('contact angle of gear-bearing', '0 deg');
    await element('gear-pair', 'gear-pair', { from: 'gear', to: 'pump' });
    await typed('driving teeth of gear-pair', '40');
    await typed('driven teeth of gear-pair', '20');
    await element('impeller', 'impeller', { 'on shaft': 'pump' });
    await typed('vanes of impeller', '6');
    await unfolded(page, 'How it is run');
    await typed('speed of How it is run', '1480..1490 r/min');
    const state = page.getByRole('form', { name: 'Add an operating state' });
    await state.getByLabel('A new state').fill('duty');
    await state.getByLabel('at a speed of motor').fill('1485 r/min');
    await kept(() => state.getByRole('button').click());
    await unfolded(page, 'Speeds on plates');
    await typed('plate of motor of Speeds on plates', '1485 r/min');
    expect(await demanded(served.text())).toEqual(await demanded(written));
    expect(await axeViolations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Take away… shaft gear' }).click();
    const dialog = page.getByRole('dialog', { name: 'Take gear away' });
    expect(await dialog.textContent()).toContain('the element gear-bearing, which stands on it');
    await kept(() => dialog.getByRole('button', { name: 'Take gear away' }).click());
    for (; steps > 0; steps--) {
      const before = served.text();
      await page.getByRole('button', { name: 'Undo' }).click();
      await expect.poll(() => served.text()).not.toBe(before);
    }
    expect(served.text()).toBe(empty);
    expect(opened.alarms).toEqual([]);
  }, 180_000);
});

async function unfolded(page: Page, title: string): Promise<void> {
  await page.locator(`summary h3[title='${title}']`).click();
}

/** What the command line derives from a plant: every line over the speed range. */
async function demanded(text: string): Promise<unknown> {
  const generic = readFileSync(resolve(import.meta.dirname, '../../files/catalogues/generic.yaml'), 'utf8');
  const files = inMemory({ 'plant.yaml': text, 'house/packages/files/catalogues/generic.yaml': generic });
  const demand = commands.find((each) => each.name === 'demand')!;
  const { json } = await performed(demand, files, { plant: 'plant.yaml' }, manner());
  expect(JSON.stringify(json)).toContain('vane-pass');
  return json;
}
