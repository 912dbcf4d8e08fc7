import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { showLevel } from '../../../quantity/index.ts';
import { iso10816x7edition2009tables } from './iso-10816-7-2009.ts';

/** Displacement of slow pumps in micrometres peak-to-peak, as the check values print it, from memory. */
const printed = {
  'iso-10816-7-2009-category-i-slow': ['50', '80', '130'],
  'iso-10816-7-2009-category-ii-slow': ['65', '105', '165'],
} as const;

test('printed: displacement of slow pumps, category I and II (check values, from memory)', () => {
  for (const [name, [ab, bc, cd]] of Object.entries(printed)) {
    const { boundaries } = iso10816x7edition2009tables.find((each) => each.name === name)!;
    expect(
      [boundaries.ab, boundaries.bc, boundaries.cd].map((each) => showLevel({ ...each, band: undefined! })),
    ).toEqual([`${ab} µm pp`, `${bc} µm pp`, `${cd} µm pp`]);
  }
});

test('printed: the numbers above are those of the check values, where these are at hand', ({ skip }) => {
  const path = new URL('../../../../../../../shared/check-values.md', import.meta.url);
  if (!existsSync(path)) return skip('the check values are not beside the project');
  const text = readFileSync(path, 'utf8');
  const [first, second] = Object.values(printed).map((row) => row.join('/'));
  expect(text).toContain(`Cat. I ${first}, Cat. II ${second}`);
});
