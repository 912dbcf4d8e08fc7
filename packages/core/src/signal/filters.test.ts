import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Broken } from '../quantity/index.ts';
import { magnitude, phase } from './complex.ts';
import { highestFilterOrder, highPass, lowPass, resonance, suspension } from './filters.ts';

const stored = JSON.parse(
  readFileSync(new URL('../../../../evidence/scipy/windows-and-filters.json', import.meta.url), 'utf8'),
);
const orders = Array.from({ length: highestFilterOrder }, (_, index) => index + 1);
const ratio = fc.double({ min: 1e-3, max: 1e3, noNaN: true });
const order = fc.constantFrom(...orders);

test(`independent: Butterworth orders 1 to 8 as scipy ${stored.versions.scipy} gives them`, () => {
  expect(stored.filters.responses).toHaveLength(16);
  for (const { order: n, kind, re, im } of stored.filters.responses) {
    const filter = kind === 'highpass' ? highPass : lowPass;
    for (const [index, frequency] of stored.filters.frequencies.entries()) {
      const ours = filter(frequency, stored.filters.corner, n);
      const size = Math.hypot(re[index], im[index]);
      expect(
        Math.hypot(ours.re - re[index], ours.im - im[index]),
        `${kind} of order ${n} at ${frequency} Hz`,
      ).toBeLessThan(1e-10 * size);
    }
  }
});

test(`independent: resonance and suspension as scipy ${stored.versions.scipy} gives them`, () => {
  const { frequencies, natural, quality, damping, resonance: r, suspension: s } = stored.resonators;
  for (const [index, frequency] of frequencies.entries()) {
    const ourResonance = resonance(frequency, natural, quality);
    expect(ourResonance.re).toBeCloseTo(r.re[index], 11);
    expect(ourResonance.im).toBeCloseTo(r.im[index], 11);
    // scipy was given −s²/(s² + 2ζω₀s + ω₀²), which is r²/(1 − r² + 2jζr): the mass relative to its frame.
    const ourSuspension = suspension(frequency, natural, damping);
    expect(ourSuspension.re).toBeCloseTo(s.re[index], 11);
    expect(ourSuspension.im).toBeCloseTo(s.im[index], 11);
  }
});

test('law: |high-pass| = 1/√(1 + (f_c/f)^2n) and |low-pass| = 1/√(1 + (f/f_c)^2n)', () => {
  fc.assert(
    fc.property(ratio, order, (x, n) => {
      const high = 1 / Math.sqrt(1 + x ** (-2 * n));
      const low = 1 / Math.sqrt(1 + x ** (2 * n));
      expect(magnitude(highPass(7 * x, 7, n)) / high).toBeCloseTo(1, 11);
      expect(magnitude(lowPass(7 * x, 7, n)) / low).toBeCloseTo(1, 11);
    }),
  );
});

test('law: a high-pass leads and a low-pass lags by n·45° at the corner, each 3.01 dB down', () => {
  for (const n of orders) {
    const turn = (value: number) => Math.abs(Math.sin(value / 2));
    expect(turn(phase(highPass(10, 10, n)) - (n * Math.PI) / 4)).toBeLessThan(1e-12);
    expect(turn(phase(lowPass(10, 10, n)) + (n * Math.PI) / 4)).toBeLessThan(1e-12);
    expect(20 * Math.log10(magnitude(highPass(10, 10, n)))).toBeCloseTo(-3.0103, 4);
  }
});

test('law: a high-pass at f and a low-pass mirrored at f_c²/f are conjugate', () => {
  fc.assert(
    fc.property(ratio, order, (x, n) => {
      const high = highPass(10 * x, 10, n);
      const low = lowPass(10 / x, 10, n);
      expect(high.re).toBeCloseTo(low.re, 10);
      expect(high.im).toBeCloseTo(-low.im, 10);
    }),
  );
});

test('law: at rest a high-pass and a suspension give nothing, a low-pass and a resonance everything', () => {
  for (const n of orders) {
    expect(magnitude(highPass(0, 10, n))).toBe(0);
    expect(magnitude(lowPass(0, 10, n))).toBe(1);
  }
  expect(magnitude(suspension(0, 10, 0.7))).toBe(0);
  expect(magnitude(resonance(0, 10, 30))).toBe(1);
});

test('printed: the frequency ratio at which an undamped resonance reads 1, 2, 5, 10, 12 % and 3 dB too high (arithmetic of 1/(1 − r²))', () => {
  const printed = { 0.0995: 1.01, 0.14: 1.02, 0.21822: 1.05, 0.30151: 1.1, 0.32733: 1.12, 0.5412: Math.SQRT2 };
  for (const [place, gain] of Object.entries(printed)) {
    const half = 0.5 * 10 ** -(place.split('.')[1]!.length === 2 ? 4 : place.split('.')[1]!.length);
    const at = (r: number) => magnitude(resonance(r, 1, 1e12));
    expect(at(Number(place) - half)).toBeLessThanOrEqual(gain);
    expect(at(Number(place) + half)).toBeGreaterThanOrEqual(gain);
  }
});

test('printed: magnitude of a suspension at its natural frequency is 1/(2ζ) (Wielandt, seismometry notes; read)', () => {
  for (const damping of [0.5, 0.6, 0.65, 0.7, 0.9]) {
    expect(magnitude(suspension(4.5, 4.5, damping))).toBeCloseTo(1 / (2 * damping), 12);
  }
});

test('printed: where a moving coil comes within 5 % and 10 % of its sensitivity (arithmetic of the response)', () => {
  const within5 = { 0.5: 3.105, 0.6: 1.185, 0.65: 1.389, 0.7: 1.692, 0.707: 1.744 };
  const within10 = { 0.5: 2.115, 0.6: 1.091, 0.65: 1.228, 0.7: 1.408, 0.707: 1.437 };
  for (const [table, error] of [
    [within5, 0.05],
    [within10, 0.1],
  ] as const) {
    for (const [damping, place] of Object.entries(table)) {
      const off = (r: number) => Math.abs(magnitude(suspension(r, 1, Number(damping))) - 1);
      expect(off(place - 0.0006), `ζ ${damping}`).toBeGreaterThanOrEqual(error - 1e-9);
      expect(off(place + 0.0006), `ζ ${damping}`).toBeLessThanOrEqual(error + 1e-9);
    }
  }
});

test('printed: the phase lead of a moving coil over velocity is atan2(2ζr, r² − 1), 90° at f₀ (Wielandt; read)', () => {
  for (const damping of [0.5, 0.7, 1.2]) {
    for (const r of [0.2, 1, 3]) {
      const coil = suspension(r, 1, damping);
      const lead = phase({ re: -coil.re, im: -coil.im });
      expect(lead).toBeCloseTo(Math.atan2(2 * damping * r, r * r - 1), 12);
    }
  }
});

test('negative: no corner, no order, no frequency below zero: loud, never NaN', () => {
  for (const [frequency, corner, n] of [
    [1, 0, 2],
    [1, -1, 2],
    [1, 10, 0],
    [1, 10, 9],
    [1, 10, 1.5],
    [-1, 10, 2],
    [Number.NaN, 10, 2],
    [1, Number.NaN, 2],
  ] as const) {
    expect(() => highPass(frequency, corner, n)).toThrow(Broken);
    expect(() => lowPass(frequency, corner, n)).toThrow(Broken);
  }
  expect(() => resonance(1, 0, 5)).toThrow(Broken);
  expect(() => resonance(1, 5, 0)).toThrow(Broken);
  expect(() => suspension(1, 5, 0)).toThrow(Broken);
});
