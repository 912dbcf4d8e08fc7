import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Detector, detectors, sineFactor } from './detector.ts';
import { asMotion, asSineDetector, level } from './level.ts';
import { motions } from './quantities.ts';
import { Broken } from './refusal.ts';

const value = fc.double({ min: 1e-9, max: 1e3, noNaN: true });
const motion = fc.constantFrom(...motions);
const detector = fc.constantFrom(...detectors);
const frequency = fc.double({ min: 0.01, max: 50_000, noNaN: true });

test('independent: what each detector reads of a sampled sine is what the factors say', () => {
  const samples = Float64Array.from({ length: 100_000 }, (_, n) => Math.SQRT2 * Math.sin((2 * Math.PI * n) / 100_000));
  const mean = (of: (x: number) => number) => samples.reduce((total, x) => total + of(x), 0) / samples.length;
  const read: Readonly<Record<Detector, number>> = {
    rms: Math.sqrt(mean((x) => x * x)),
    peak: Math.max(...samples),
    'peak-to-peak': Math.max(...samples) - Math.min(...samples),
    'derived-peak': Math.SQRT2 * Math.sqrt(mean((x) => x * x)),
    average: mean(Math.abs),
  };
  for (const each of detectors) expect(sineFactor[each], each).toBeCloseTo(read[each], 8);
});

test('printed: rms = 1.11072 average, average = 0.90032 rms = 0.63662 peak, crest 1.41421 (trade chart, second-hand)', () => {
  const one = level('velocity', 1, 'rms');
  expect(asSineDetector(one, 'average').value).toBeCloseTo(0.90032, 5);
  expect(asSineDetector(level('velocity', 1, 'average'), 'rms').value).toBeCloseTo(1.11072, 5);
  expect(asSineDetector(level('velocity', 1, 'peak'), 'average').value).toBeCloseTo(0.63662, 5);
  expect(asSineDetector(one, 'peak').value).toBeCloseTo(Number('1.41421'), 5);
});

test('law: detector and motion conversions have inverses, commute, and keep the band', () => {
  const band = { low: 10, high: 1000 };
  fc.assert(
    fc.property(value, motion, motion, detector, detector, frequency, (x, from, to, a, b, f) => {
      const start = level(from, x, a, band);
      const there = asSineDetector(asMotion(start, to, f), b);
      const other = asMotion(asSineDetector(start, b), to, f);
      expect(there.value / other.value).toBeCloseTo(1, 12);
      const back = asSineDetector(asMotion(there, from, f), a);
      expect(back.value / x).toBeCloseTo(1, 12);
      expect(back).toMatchObject({ quantity: from, detector: a, band });
    }),
  );
});

test('negative: motion is not converted at rest', () => {
  for (const f of [0, -5, Number.NaN]) {
    expect(() => asMotion(level('acceleration', 1, 'rms'), 'displacement', f)).toThrow(Broken);
  }
  expect(asMotion(level('velocity', 1, 'rms'), 'velocity', 0).value).toBe(1);
});
