import fc from 'fast-check';
import { expect, test } from 'vitest';
import { showSpan, showTolerance } from './format.ts';
import { Refusal } from './refusal.ts';
import { parseBand, parseSpan, parseTolerance } from './span.ts';

test('law: ranges are read in every writing, and one value is a range of no width', () => {
  const spans = [
    ['25..50 Hz', 'frequency', 25, 50],
    ['25...50 Hz', 'frequency', 25, 50],
    ['25…50 Hz', 'frequency', 25, 50],
    ['25-50 Hz', 'frequency', 25, 50],
    ['25 - 50 Hz', 'frequency', 25, 50],
    ['25–50 Hz', 'frequency', 25, 50],
    ['25 Hz to 1 kHz', 'frequency', 25, 1000],
    ['10 Hz-1 kHz', 'frequency', 10, 1000],
    ['1e-3..1 Hz', 'frequency', 1e-3, 1],
    ['1e-3-1 Hz', 'frequency', 1e-3, 1],
    ['-10..14 V', 'voltage', -10, 14],
    ['10-14 V', 'voltage', 10, 14],
    ['0.9..1.1', 'ratio', 0.9, 1.1],
    ['24 Hz', 'frequency', 24, 24],
    ['1e-3 Hz', 'frequency', 1e-3, 1e-3],
    ['5 m s-2', 'acceleration', 5, 5],
    ['2 m s-2..5 m s-2', 'acceleration', 2, 5],
  ] as const;
  for (const [text, name, low, high] of spans) expect(parseSpan(text, name), text).toEqual({ low, high });
  const temperature = parseSpan('-50..120 °C', 'temperature');
  expect(temperature.low).toBeCloseTo(223.15, 10);
  expect(temperature.high).toBeCloseTo(393.15, 10);
  expect(parseSpan('0,5-10 kHz', 'frequency', { decimal: 'comma' })).toEqual({ low: 500, high: 10_000 });
});

test('law: a range as shown reads back', () => {
  const value = fc.double({ min: 1e-3, max: 1e5, noNaN: true });
  fc.assert(
    fc.property(
      value,
      value,
      fc.constantFrom('frequency' as const, 'voltage' as const, 'length' as const),
      (a, b, name) => {
        const span = { low: Math.min(a, b), high: Math.max(a, b) } as never;
        const read = parseSpan(showSpan(name, span), name);
        const scale = Math.max(a, b);
        expect(Math.abs(read.low - Math.min(a, b))).toBeLessThan(6e-4 * scale);
        expect(Math.abs(read.high - scale)).toBeLessThan(6e-4 * scale);
      },
    ),
  );
});

test('negative: exchanged ends, half a range and a range of two quantities are refused', () => {
  for (const text of [
    '50..25 Hz',
    '25.. Hz',
    '..50 Hz',
    'to 50 Hz',
    '25 Hz to',
    '25 V to 50 Hz',
    '25..50',
    '25..50..75 Hz',
    '10 Hz..14',
  ]) {
    expect(() => parseSpan(text, 'frequency'), text).toThrow(Refusal);
  }
  expect(() => parseSpan('50..25 Hz', 'frequency')).toThrow(/exchanged/);
  for (const text of ['10 Hz', '10..10 Hz', '-10..10 Hz', '10..1000 rms']) {
    expect(() => parseBand(text), text).toThrow(Refusal);
  }
});

test('law: tolerances are read as fractions, and shown so that they read back', () => {
  expect(parseTolerance('±10 %')).toEqual({ low: -0.1, high: 0.1 });
  expect(parseTolerance('+/-5%')).toEqual({ low: -0.05, high: 0.05 });
  expect(parseTolerance('-20/+10 %')).toEqual({ low: -0.2, high: 0.1 });
  const uneven = parseTolerance('+41/-29.3 %');
  expect(uneven.high).toBeCloseTo(0.41, 12);
  expect(uneven.low).toBeCloseTo(-0.293, 12);
  expect(parseTolerance('+1/−3 dB').low).toBeCloseTo(10 ** (-3 / 20) - 1, 12);
  expect(parseTolerance('+1/−3 dB').high).toBeCloseTo(10 ** (1 / 20) - 1, 12);
  expect(parseTolerance('±1,5 %', { decimal: 'comma' }).high).toBeCloseTo(0.015, 12);
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 999 }), fc.integer({ min: 1, max: 999 }), (up, down) => {
      const read = parseTolerance(showTolerance({ low: -down / 1000, high: up / 1000 }));
      expect(read.high).toBeCloseTo(up / 1000, 12);
      expect(read.low).toBeCloseTo(-down / 1000, 12);
    }),
  );
});

test('negative: a tolerance needs its sign and its unit, and one unit only', () => {
  for (const text of ['10 %', '±10', '±', '± %', '+10 %', '+3 dB/-5 %', '±10 Hz', '±300 dB', '±1,5 %', '10', '']) {
    expect(() => parseTolerance(text), text).toThrow(Refusal);
  }
});
