import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Broken } from '../../quantity/index.ts';
import { magnitude, phase } from '../complex.ts';
import { highPass, lowPass, resonance } from '../filters.ts';
import {
  digitalBandPass,
  digitalHighPass,
  digitalLowPass,
  digitalResonance,
  digitalResponse,
  filtered,
  runningFilter,
} from './digital-filter.ts';
import { blocksOf, evenNoise, madeTone } from './made-record.ts';

const stored = JSON.parse(
  readFileSync(new URL('../../../../../evidence/scipy/measures.json', import.meta.url), 'utf8'),
);
const order = fc.integer({ min: 1, max: 8 });

const sectionsOf = (kind: string, corner: number | readonly [number, number], n: number, rate: number) => {
  if (typeof corner !== 'number') return digitalBandPass(corner[0], corner[1], n, rate);
  return kind === 'lowpass' ? digitalLowPass(corner, n, rate) : digitalHighPass(corner, n, rate);
};

test(`independent: filters of orders 1 to 8 as scipy ${stored.versions.scipy} gives them, from rest and steady`, () => {
  const { rate, seed, length, frequencies, filters } = stored.filters;
  const noise = evenNoise(seed, length);
  expect(filters).toHaveLength(24);
  for (const { order: n, kind, corner, last, steady, re, im } of filters) {
    const sections = sectionsOf(kind, corner, n, rate);
    const passed = filtered(sections, noise).slice(-20);
    const begun = filtered(sections, noise, 'steady');
    for (let k = 0; k < 20; k++) {
      expect(Math.abs(passed[k]! - last[k]), `${kind} ${n}`).toBeLessThan(1e-9);
      expect(Math.abs(begun[k]! - steady[k]), `${kind} ${n}, steady`).toBeLessThan(1e-9);
    }
    for (const [k, frequency] of frequencies.entries()) {
      const ours = digitalResponse(sections, frequency, rate);
      expect(Math.hypot(ours.re - re[k], ours.im - im[k])).toBeLessThan(1e-9);
    }
  }
});

test('law: far below the sampling rate a digital filter is the analogue one, and its corner is exact anywhere', () => {
  fc.assert(
    fc.property(order, fc.double({ min: 1e-3, max: 0.49, noNaN: true }), (n, place) => {
      expect(magnitude(digitalResponse(digitalLowPass(place, n, 1), place, 1))).toBeCloseTo(Math.SQRT1_2, 9);
      expect(magnitude(digitalResponse(digitalHighPass(place, n, 1), place, 1))).toBeCloseTo(Math.SQRT1_2, 9);
      const corner = place / 100;
      for (const f of [corner / 3, corner * 2]) {
        const low = digitalResponse(digitalLowPass(corner, n, 1), f, 1);
        const high = digitalResponse(digitalHighPass(corner, n, 1), f, 1);
        expect(magnitude(low) / magnitude(lowPass(f, corner, n))).toBeCloseTo(1, 2);
        expect(magnitude(high) / magnitude(highPass(f, corner, n))).toBeCloseTo(1, 2);
        expect(Math.sin(phase(low) - phase(lowPass(f, corner, n)))).toBeCloseTo(0, 2);
      }
    }),
  );
});

test('law: a band-pass is −3.01 dB on both corners and 1 at their warped middle', () => {
  fc.assert(
    fc.property(order, fc.double({ min: 0.05, max: 0.2, noNaN: true }), (n, low) => {
      const high = low + 0.2;
      const sections = digitalBandPass(low, high, n, 1);
      expect(magnitude(digitalResponse(sections, low, 1))).toBeCloseTo(Math.SQRT1_2, 8);
      expect(magnitude(digitalResponse(sections, high, 1))).toBeCloseTo(Math.SQRT1_2, 8);
      const middle = Math.atan(Math.sqrt(Math.tan(Math.PI * low) * Math.tan(Math.PI * high))) / Math.PI;
      expect(magnitude(digitalResponse(sections, middle, 1))).toBeCloseTo(1, 8);
      expect(magnitude(digitalResponse(sections, 0, 1))).toBeLessThan(1e-12);
    }),
  );
});

test('law: a resonance is Q with a lag of 90° at its natural frequency, 1 at rest, and the analogue one far below', () => {
  const sections = digitalResonance(2500, 30, 51_200);
  expect(magnitude(digitalResponse(sections, 2500, 51_200))).toBeCloseTo(30, 9);
  expect(phase(digitalResponse(sections, 2500, 51_200))).toBeCloseTo(-Math.PI / 2, 9);
  expect(magnitude(digitalResponse(sections, 0, 51_200))).toBeCloseTo(1, 12);
  expect(magnitude(digitalResponse(sections, 1000, 51_200))).toBeCloseTo(magnitude(resonance(1000, 2500, 30)), 2);
});

test('law: how a record is cut changes nothing; a sum through a filter is the sum of its parts', () => {
  const [a, b] = [evenNoise(1, 3000), evenNoise(2, 3000)];
  for (const begins of ['at-rest', 'steady'] as const) {
    const sections = [...digitalBandPass(0.03, 0.2, 4, 1), ...digitalResonance(0.1, 9, 1)];
    const whole = filtered(sections, a, begins);
    const running = runningFilter(sections, begins);
    const pieces = blocksOf(a, 1, 7, 512, 3).flatMap((block) => {
      running.through(block);
      return [...block];
    });
    expect(Float64Array.from(pieces)).toEqual(whole);
    const other = filtered(sections, b, begins);
    const both = filtered(
      sections,
      a.map((x, n) => 2 * x - 3 * b[n]!),
      begins,
    );
    for (let n = 0; n < both.length; n++) expect(both[n]).toBeCloseTo(2 * whole[n]! - 3 * other[n]!, 10);
  }
});

test('law: what stood for ever passes a low-pass unchanged and a high-pass not at all', () => {
  const still = new Float64Array(50).fill(11.5);
  for (const x of filtered(digitalLowPass(0.02, 5, 1), still, 'steady')) expect(x).toBeCloseTo(11.5, 8);
  for (const x of filtered(digitalHighPass(0.001, 5, 1), still, 'steady')) expect(Math.abs(x)).toBeLessThan(1e-9);
});

test('law: a sine comes through with the amplitude and phase of the response, once settled', () => {
  const sections = digitalBandPass(0.05, 0.15, 3, 1);
  const through = filtered(sections, madeTone(4096, 0.11)).slice(-400);
  const { re, im } = digitalResponse(sections, 0.11, 1);
  for (let n = 0; n < through.length; n++) {
    const angle = 2 * Math.PI * 0.11 * (n + 4096 - 400);
    expect(through[n]).toBeCloseTo(re * Math.cos(angle) - im * Math.sin(angle), 9);
  }
});

test('negative: a corner at half the sampling rate, an order of 9, a band turned round', () => {
  expect(() => digitalLowPass(50, 2, 100)).toThrow(Broken);
  expect(() => digitalHighPass(10, 9, 100)).toThrow(Broken);
  expect(() => digitalHighPass(10, 0, 100)).toThrow(Broken);
  expect(() => digitalBandPass(20, 10, 2, 100)).toThrow(Broken);
  expect(() => digitalResonance(20, 0, 100)).toThrow(Broken);
});
