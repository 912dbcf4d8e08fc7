import { expect, test } from 'vitest';
import { degreesOfFreedomField, reportedField, showReported } from './reported.ts';

test.each<[number, number, number, string]>([
  [50_000_838.2, 31.66, 2, '50000838'],
  [50_000_838.2, 31.66, 3, '50000838.2'],
  [219.8465, 0.2956, 2, '219.85'],
  [-1.23456, 0.0123, 2, '\u22121.235'],
  [1.5e-9, 2.3e-10, 2, '0.00000000150'],
  [1.5e-12, 2.3e-18, 2, '1.5e-12'],
  [6.02e23, 1e18, 2, '6.02e23'],
  [-0.0001, 0.5, 2, '0.00'],
  [0, 0.5, 2, '0.00'],
  [7, 0, 2, '7'],
  [1234567, 98765, 2, '1234567'],
])('%d known to %d is shown with %d digits of that as %s', (value, uncertainty, digits, shown) => {
  expect(showReported({ value, uncertainty }, digits)).toBe(shown);
});

test('the unit is a label, and a comma is a comma', () => {
  expect(showReported({ value: 1.5, uncertainty: 0.12, unit: 'mm' }, 2, 'comma')).toBe('1,50 mm');
});

test('a reported number is read with or without its label', () => {
  const field = reportedField('x', { symbol: 'y', digits: 2 });
  expect(field.read('50.000838 mm', { decimal: 'point' })).toEqual({ value: 50.000838, uncertainty: 0, unit: 'mm' });
  expect(field.read(' \u22121e-3 ', { decimal: 'point' })).toEqual({ value: -0.001, uncertainty: 0 });
  expect(() => field.read('mm', { decimal: 'point' })).toThrow('a number');
  expect(() => field.read(null, { decimal: 'point' })).toThrow('a number');
});

test('degrees of freedom are a number or the word', () => {
  const field = degreesOfFreedomField('x', { symbol: 'ν' });
  expect(field.read('infinite', { decimal: 'point' })).toBe('infinite');
  expect(field.read('16.7', { decimal: 'point' })).toBe(16.7);
  expect(() => field.read('0', { decimal: 'point' })).toThrow("or 'infinite'");
  expect(() => field.read('', { decimal: 'point' })).toThrow("or 'infinite'");
});
