import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Broken } from '../quantity/index.ts';
import { complexFourierTransform, isPowerOfTwo, realFourierTransform } from './fft.ts';

const stored = JSON.parse(
  readFileSync(new URL('../../../../evidence/scipy/windows-and-filters.json', import.meta.url), 'utf8'),
).transform;

const sample = fc.double({ min: -1000, max: 1000, noNaN: true });
const record = fc
  .integer({ min: 1, max: 9 })
  .chain((power) => fc.array(sample, { minLength: 2 ** power, maxLength: 2 ** power }));

test('independent: the lines of a seeded record as numpy gives them', () => {
  const { re, im } = realFourierTransform(256)(stored.record);
  for (let k = 0; k <= 128; k++) {
    expect(re[k]).toBeCloseTo(stored.re[k], 11);
    expect(im[k]).toBeCloseTo(stored.im[k], 11);
  }
});

test('law: the same lines as the definition, summed term by term', () => {
  fc.assert(
    fc.property(record, (x) => {
      const { re, im } = realFourierTransform(x.length)(x);
      const scale = x.reduce((total, each) => total + Math.abs(each), 1);
      for (let k = 0; k <= x.length / 2; k++) {
        let [real, imaginary] = [0, 0];
        for (const [n, value] of x.entries()) {
          const angle = (2 * Math.PI * ((k * n) % x.length)) / x.length;
          real += value * Math.cos(angle);
          imaginary -= value * Math.sin(angle);
        }
        expect(Math.abs(re[k]! - real)).toBeLessThan(1e-12 * scale);
        expect(Math.abs(im[k]! - imaginary)).toBeLessThan(1e-12 * scale);
      }
    }),
    { numRuns: 60 },
  );
});

test('law (Parseval): the squares of the samples and of the lines agree', () => {
  fc.assert(
    fc.property(record, (x) => {
      const { re, im } = realFourierTransform(x.length)(x);
      const half = x.length / 2;
      let lines = 0;
      for (let k = 0; k <= half; k++) lines += (k === 0 || k === half ? 1 : 2) * (re[k]! ** 2 + im[k]! ** 2);
      const samples = x.reduce((total, value) => total + value * value, 0);
      expect(Math.abs(lines / x.length - samples)).toBeLessThanOrEqual(1e-12 * samples + 1e-20);
    }),
  );
});

test('law: a complex transform and its inverse (parts exchanged, divided by N) give the record back', () => {
  fc.assert(
    fc.property(record, record, (a, b) => {
      const length = Math.min(a.length, b.length);
      const re = Float64Array.from(a.slice(0, length));
      const im = Float64Array.from(b.slice(0, length));
      const transform = complexFourierTransform(length);
      transform(re, im);
      transform(im, re);
      for (let n = 0; n < length; n++) {
        expect(Math.abs(re[n]! / length - a[n]!)).toBeLessThan(1e-10);
        expect(Math.abs(im[n]! / length - b[n]!)).toBeLessThan(1e-10);
      }
    }),
  );
});

test('negative: other lengths are refused loudly, and a record of another length too', () => {
  for (const length of [0, 1, 3, 1000, -8, 2.5, Number.NaN]) {
    expect(() => realFourierTransform(length)).toThrow(Broken);
  }
  expect(isPowerOfTwo(1)).toBe(true);
  expect(isPowerOfTwo(1024)).toBe(true);
  expect(isPowerOfTwo(1000)).toBe(false);
  expect(() => realFourierTransform(8)([1, 2, 3, 4])).toThrow(Broken);
});
