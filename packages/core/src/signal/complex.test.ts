import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  type Complex,
  complex,
  difference,
  imaginary,
  magnitude,
  oneComplex,
  phase,
  product,
  quotient,
  reciprocal,
  scaled,
  sum,
  zeroComplex,
} from './complex.ts';

const part = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const number = fc.record({ re: part, im: part });
const notSmall = number.filter((each) => magnitude(each) > 1e-3);

function near(a: Complex, b: Complex, scale = 1): void {
  expect(Math.hypot(a.re - b.re, a.im - b.im)).toBeLessThanOrEqual(1e-12 * Math.max(scale, magnitude(a), magnitude(b)));
}

test('law: sums and products commute, and products distribute over sums', () => {
  fc.assert(
    fc.property(number, number, number, (a, b, c) => {
      near(sum(a, b), sum(b, a));
      near(product(a, b), product(b, a));
      const scale = magnitude(a) * (magnitude(b) + magnitude(c));
      near(product(a, sum(b, c)), sum(product(a, b), product(a, c)), scale);
    }),
  );
});

test('law: a/b·b = a, a·(1/a) = 1, a − a = 0', () => {
  fc.assert(
    fc.property(number, notSmall, (a, b) => {
      near(product(quotient(a, b), b), a);
      near(product(b, reciprocal(b)), oneComplex);
      near(difference(a, a), zeroComplex);
    }),
  );
});

test('law: magnitudes multiply and phases add', () => {
  fc.assert(
    fc.property(notSmall, notSmall, (a, b) => {
      const both = product(a, b);
      expect(magnitude(both)).toBeCloseTo(magnitude(a) * magnitude(b), -Math.log10(magnitude(both) * 1e-11));
      const turn = phase(both) - phase(a) - phase(b);
      expect(Math.abs(Math.sin(turn / 2))).toBeLessThan(1e-9);
    }),
  );
});

test('law: j² = −1, and the phase of j is a quarter turn', () => {
  near(product(imaginary, imaginary), complex(-1, 0));
  expect(phase(imaginary)).toBe(Math.PI / 2);
  expect(phase(zeroComplex)).toBe(0);
  near(scaled(complex(3, -4), 2), complex(6, -8));
});

test('negative: parts whose squares would overflow or vanish still divide', () => {
  near(quotient(complex(1e200, 1e200), complex(1e200, 1e200)), oneComplex);
  near(quotient(complex(1e-200, -1e-200), complex(1e-200, 1e-200)), complex(0, -1));
  near(quotient(complex(0, 1e200), complex(1e190, 1e200)), complex(1, 1e-10), 1);
  expect(magnitude(complex(3e200, 4e200)) / 5e200).toBeCloseTo(1, 14);
});
