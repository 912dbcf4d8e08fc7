import { expect, test } from 'vitest';
import { usualSpares } from './part-quantities.ts';

test('a tenth is kept in spare, to the next whole and at least one (worked by hand)', () => {
  expect([1, 9, 10, 11, 40, 41].map(usualSpares)).toEqual([1, 1, 1, 2, 4, 5]);
});
