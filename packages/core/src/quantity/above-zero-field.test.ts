import fc from 'fast-check';
import { expect, test } from 'vitest';
import { aboveZeroField, countUpTo, notBelowZeroField } from './above-zero-field.ts';
import { countField } from './field.ts';
import { pointDecimals } from './number.ts';
import { levelField, quantityField, spanField } from './quantity-field.ts';
import { Refusal } from './refusal.ts';

const corner = aboveZeroField(quantityField('frequency', 'Corner'));
const range = aboveZeroField(levelField(['acceleration'], 'Range', { example: '80 g peak' }));
const stiffness = aboveZeroField(spanField('stiffness', 'Stiffness'), 'A rigid mount is a stud.');
const order = countUpTo(8, countField('Order'));

test('law: what is above zero is read as before, and nothing else is', () => {
  fc.assert(
    fc.property(fc.integer({ min: -1000, max: 1000 }), (tenths) => {
      const text = `${tenths / 10} V`;
      const plain = quantityField('voltage', 'Voltage');
      const read = () => aboveZeroField(plain).read(text, pointDecimals);
      if (tenths > 0) expect(read()).toBe(plain.read(text, pointDecimals));
      else expect(read).toThrow(Refusal);
    }),
  );
});

test('negative: zero is refused in a quantity, a level and a span, and the sentence says above zero', () => {
  expect(() => corner.read('0 Hz', pointDecimals)).toThrow(/above zero/);
  expect(() => range.read('0 g peak', pointDecimals)).toThrow(/above zero/);
  expect(() => stiffness.read('0..1e6 N/m', pointDecimals)).toThrow(/A rigid mount is a stud/);
  expect(stiffness.read('1e5..1e6 N/m', pointDecimals)).toEqual({ low: 1e5, high: 1e6 });
  expect(range.read('80 g peak', pointDecimals).value).toBeCloseTo(784.532, 9);
});

test('negative: a count beyond its most is refused, the most itself is read', () => {
  expect(order.read(8, pointDecimals)).toBe(8);
  expect(() => order.read(9, pointDecimals)).toThrow(/at most 8/);
  expect(() => order.read(0, pointDecimals)).toThrow(Refusal);
  expect(order.schema.maximum).toBe(8);
});

test('negative: a width below zero is refused, a width of zero is read', () => {
  const width = notBelowZeroField(quantityField('fraction', 'Half-width'));
  expect(width.read('0 %', pointDecimals)).toBe(0);
  expect(width.read('1.5 %', pointDecimals)).toBeCloseTo(0.015, 12);
  expect(() => width.read('-1.5 %', pointDecimals)).toThrow(/zero or more.*dash/s);
});
