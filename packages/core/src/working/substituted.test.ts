import { expect, test } from 'vitest';
import { substituted } from './working.ts';

const letters = new Map([
  ['f', '25 Hz'],
  ['f_r', '24 Hz'],
  ['k', '0.2'],
]);

test('law: a letter is whole, what stands left of the equals sign stays, and a power is of the whole value', () => {
  expect(substituted('f = f_r·(1 − k)', letters)).toBe('f = 24 Hz·(1 − 0.2)');
  expect(substituted('x = f_o + f', letters)).toBe('x = f_o + 25 Hz');
  expect(substituted('x = f^2 + k²', letters)).toBe('x = (25 Hz)^2 + (0.2)²');
});
