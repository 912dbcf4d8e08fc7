import { expect, it } from 'vitest';
import { parse } from 'yaml';
import { axeScript, axeViolations } from './accessibility.ts';
import { inBrowser } from './chromium.ts';
import { openedPage, phone, sideways } from './opened-page.ts';
import { examplePlant } from './plants.ts';
import { servedPlant } from './served-plant.ts';

inBrowser('renaming', () => {
  it('takes every reference along in one step, refuses a name that is taken, and is undone to the byte', async () => {
    const text = examplePlant('raw-water-pump');
    await using served = await servedPlant(text);
    await using opened = await openedPage(served, { at: '/machine/P-301', scripts: [axeScript] });
    const { page } = opened;
    await page.getByRole('button', { name: 'Rename… shaft pump' }).click();
    const dialog = page.getByRole('dialog', { name: 'Rename pump' });
    const name = dialog.getByRole('textbox', { name: 'New name of the shaft' });
    await name.fill('motor');
    await expect.poll(() => dialog.getByRole('alert').textContent()).toContain('already');
    expect(await dialog.getByRole('button', { name: 'Rename', exact: true }).isDisabled()).toBe(true);
    await name.fill('wheel-shaft');
    await expect
      .poll(() => dialog.textContent())
      .toContain('overall velocity, components, 1.: wheel-shaft/1x at lowest');
    expect(await axeViolations(page)).toEqual([]);
    await name.press('Enter');
    await dialog.waitFor({ state: 'detached' });
    await expect
      .poll(() => served.text())
      .toBe(
        text
          .replace('shafts: [motor, pump]', 'shafts: [motor, wheel-shaft]')
          .replace('to: pump\n', 'to: wheel-shaft\n')
          .replaceAll('on: pump\n', 'on: wheel-shaft\n')
          .replaceAll('pump/1x', 'wheel-shaft/1x'),
      );
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => served.text()).toBe(text);

    await page.getByRole('button', { name: 'Rename… machine P-301' }).click();
    await page.getByRole('textbox', { name: 'New name of the machine' }).fill('P-302');
    await page.getByRole('button', { name: 'Rename', exact: true }).click();
    await page.getByRole('heading', { level: 1, name: 'P-302' }).waitFor();
    expect(Object.keys(parse(served.text()).machines)).toEqual(['P-302']);
    expect(opened.alarms).toEqual([]);
    expect(opened.violations).toEqual([]);
  });

  it('and what a point listens to are done with a thumb', async () => {
    const text = examplePlant('raw-water-pump');
    await using served = await servedPlant(text);
    await using opened = await openedPage(served, {
      at: '/machine/P-301',
      size: phone,
      touch: true,
      scripts: [axeScript],
    });
    const { page } = opened;
    await page.locator('summary[aria-label="Change point pump-drive-end-loop"]').tap();
    const small = await page.locator('.acts.fold[open] :is(button, summary)').evaluateAll((all) =>
      all
        .map((each) => each.getBoundingClientRect())
        .filter(({ width, height }) => width < 44 || height < 44)
        .map(({ width, height }) => `${width} × ${height}`),
    );
    expect(small).toEqual([]);
    await page.getByRole('button', { name: 'Listens to… point pump-drive-end-loop' }).tap();
    const dialog = page.getByRole('dialog', { name: 'What pump-drive-end-loop listens to' });
    await dialog.getByRole('checkbox', { name: 'impeller' }).tap();
    expect(await axeViolations(page)).toEqual([]);
    expect(await sideways(page)).toEqual([]);
    await dialog.getByRole('button', { name: /^Listen to 1 of/ }).tap();
    await dialog.waitFor({ state: 'detached' });
    await expect
      .poll(() => parse(served.text()).machines['P-301'].points['pump-drive-end-loop'].hears)
      .toEqual(['impeller']);
    expect(opened.alarms).toEqual([]);
  });
});
