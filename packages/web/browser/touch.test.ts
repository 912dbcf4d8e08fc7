import { expect, it } from 'vitest';
import { inBrowser } from './chromium.ts';
import { openedPage, phone } from './opened-page.ts';
import { examplePlant, horizontal } from './plants.ts';
import { servedPlant } from './served-plant.ts';

inBrowser('under a finger', () => {
  it.each(['/', '/machine/P-301', horizontal, '/findings', '/catalogue/ACC-100', '/workings/mounted-response'])(
    'every control of %s is at least 44 px high',
    async (address) => {
      await using served = await servedPlant(examplePlant('raw-water-pump'));
      await using opened = await openedPage(served, { at: address, size: phone, touch: true });
      const small = await opened.page.evaluate(() =>
        [...document.querySelectorAll<HTMLElement>('button, select, input, [role=tab], summary')].flatMap((each) => {
          const held = each.closest('label') ?? each;
          const { height, width } = held.getBoundingClientRect();
          if (width <= 1 || height <= 1 || height >= 44) return [];
          return [`${Math.round(height)} px: ${each.outerHTML.slice(0, 90)}`];
        }),
      );
      expect(small).toEqual([]);
    },
  );
});
