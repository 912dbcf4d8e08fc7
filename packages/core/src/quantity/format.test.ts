import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  showBand,
  showDecibels,
  showIn,
  showLengthDown,
  showLevel,
  showNumber,
  showPercent,
  showQuantity,
  usualUnit,
} from './format.ts';
import { level } from './level.ts';
import { Broken } from './refusal.ts';

test('golden: numbers as an engineer writes them', () => {
  const shown = [
    [27000, '27000'],
    [9999.6, '10000'],
    [99.995, '100'],
    [1456 / 15, '97.07'],
    [0.000123456, '0.0001235'],
    [0.00000123456, '1.235e-6'],
    [12_345_678, '1.235e7'],
    [-3.5, '−3.5'],
    [-1e-9, '−1e-9'],
    [0, '0'],
    [100, '100'],
    [1000, '1000'],
    [0.5, '0.5'],
  ] as const;
  for (const [value, text] of shown) expect(showNumber(value), String(value)).toBe(text);
  expect(showNumber(3.25, 4, 'comma')).toBe('3,25');
  expect(showNumber(1.23456e-7, 3, 'comma')).toBe('1,23e-7');
});

test('golden: values in the unit that fits them', () => {
  expect(showQuantity('capacitance', 8.5e-9)).toBe('8.5 nF');
  expect(showQuantity('temperature', 338.15)).toBe('65 °C');
  expect(showQuantity('frequency', 27000)).toBe('27000 Hz');
  expect(showQuantity('frequency', 42.55e6)).toBe('42.55 MHz');
  expect(showQuantity('temperature', 338.15, { units: 'us' })).toBe('149 °F');
  expect(showQuantity('shaft speed', 24.7667)).toBe('1486 r/min');
  expect(showQuantity('resistance', 0)).toBe('0 Ω');
  expect(showQuantity('resistance', 0.99996)).toBe('1 Ω');
  expect(showQuantity('duration', 0)).toBe('0 s');
  expect(showQuantity('acceleration', 0)).toBe('0 g');
  expect(showQuantity('angle', Math.PI / 4)).toBe('45°');
  expect(showQuantity('fraction', 0.05)).toBe('5 %');
  expect(showQuantity('velocity', 0.0045, { units: 'us', decimal: 'comma' })).toBe('0,1772 in/s');
  expect(showIn('um', 'displacement', 81.0285e-6)).toBe('81.03 µm');
  expect(showBand({ low: 10, high: 1000 })).toBe('10..1000 Hz');
  expect(showPercent(0.0123)).toBe('+1.23 %');
  expect(showPercent(-0.5)).toBe('−50 %');
  expect(showDecibels(-1.44)).toBe('−1.4 dB');
  expect(usualUnit('voltage', 0.0999)).toBe('mV');
});

test('law: a length that must not be exceeded is never shown longer than it is, nor shorter by a whole unit', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 90_000, noNaN: true }), (length) => {
      for (const [units, metres] of [
        ['metric', 1],
        ['us', 0.3048],
      ] as const) {
        const shown = Number(/^\d+/.exec(showLengthDown(length, { units }))![0]) * metres;
        expect(shown).toBeLessThanOrEqual(length * (1 + 1e-9));
        expect(shown).toBeGreaterThan(length - metres * (1 + 1e-9));
      }
    }),
  );
  expect(showLengthDown(183.999)).toBe('183 m');
  expect(showLengthDown(30.48, { units: 'us' })).toBe('100 ft');
});

test('law: a number as shown, read again, differs by less than its last digit', () => {
  const size = fc.double({ min: -12, max: 14, noNaN: true });
  fc.assert(
    fc.property(size, fc.integer({ min: 2, max: 10 }), fc.boolean(), (power, digits, negative) => {
      const value = (negative ? -1 : 1) * 10 ** power;
      const read = Number(showNumber(value, digits).replace('−', '-'));
      expect(Math.abs(read - value)).toBeLessThanOrEqual(0.5001 * 10 ** (1 - digits) * Math.abs(value));
    }),
  );
});

test('negative: what is not finite is never shown', () => {
  for (const value of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
    expect(() => showNumber(value)).toThrow(Broken);
  }
});

test('law: another detector is that of a sine, and the text says so; the same one is left as stated', () => {
  const stated = level('velocity', 0.001, 'rms', { low: 2, high: 1000 });
  expect(showLevel(stated, { detector: 'peak' })).toBe('1.414 mm/s peak of a sine 2..1000 Hz');
  expect(showLevel(stated, { detector: 'peak-to-peak' })).toBe('2.828 mm/s pp of a sine 2..1000 Hz');
  expect(showLevel(stated, { detector: 'rms' })).toBe(showLevel(stated));
});
