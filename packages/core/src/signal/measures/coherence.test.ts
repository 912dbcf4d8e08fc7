import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { Broken } from '../../quantity/index.ts';
import { type CrossSpectrum, crossSpectrum } from './coherence.ts';
import { delayBetween } from './delay.ts';
import { digitalBandPass, digitalResponse, filtered } from './digital-filter.ts';
import { blocksOf, evenNoise } from './made-record.ts';
import type { DensitySettings } from './power-density.ts';

const stored = JSON.parse(
  readFileSync(new URL('../../../../../evidence/scipy/measures.json', import.meta.url), 'utf8'),
).coherence;
const settings: DensitySettings = { rate: 1000, length: 256, window: 'hann', overlap: 0.5, detrend: 'mean' };

function known(first: Float64Array, second: Float64Array, given: Partial<DensitySettings> = {}): CrossSpectrum {
  const both = crossSpectrum({ ...settings, ...given });
  both.take(first, second);
  const found = both.result();
  if (!found.known) throw new Error('expected to be known');
  return found.value;
}

/** The second channel is the first, `by` samples later, times `gain`, in noise of its own. */
function late(seed: number, length: number, by: number, gain: number, noise: number): [Float64Array, Float64Array] {
  const source = evenNoise(seed, length + 64);
  const other = evenNoise(seed + 5000, length);
  return [source.slice(64), Float64Array.from({ length }, (_, n) => gain * source[n + 64 - by]! + noise * other[n]!)];
}

test('independent: coherence and cross density as scipy gives them', () => {
  const [first, second] = late(31, 6000, 3, 0.8, 0.5);
  const found = known(first, second, { overlap: stored.overlap });
  for (let k = 1; k < 128; k++) {
    expect(found.coherence[k]).toBeCloseTo(stored.coherence[k], 9);
    expect(found.crossRe[k]).toBeCloseTo(stored.re[k], 11);
    expect(found.crossIm[k]).toBeCloseTo(stored.im[k], 11);
  }
});

test('law: of a filter alone, H₁ is its response and the coherence is one', () => {
  const sections = digitalBandPass(50, 300, 2, 1000);
  const first = evenNoise(3, 60_000);
  const found = known(first, filtered(sections, first), { length: 1024 });
  for (const line of [80, 150, 250]) {
    const exact = digitalResponse(sections, line * found.resolution, 1000);
    expect(found.responseRe[line]).toBeCloseTo(exact.re, 2);
    expect(found.responseIm[line]).toBeCloseTo(exact.im, 2);
    expect(found.coherence[line]).toBeGreaterThan(0.999);
  }
});

test('law: how a record is cut changes nothing', () => {
  const [first, second] = late(1, 5000, 2, 1, 1);
  for (const overlap of [0, 0.5, 0.75]) {
    const pieces = crossSpectrum({ ...settings, overlap });
    const [a, b] = [blocksOf(first, 1, 700, 33), blocksOf(second, 1, 700, 33)];
    for (const [k, block] of a.entries()) pieces.take(block, b[k]!);
    expect(pieces.result()).toEqual({ known: true, value: known(first, second, { overlap }) });
  }
});

test('law: the delay is found, also of a reversed channel, and 95 % intervals hold it', () => {
  let held = 0;
  const runs = 200;
  for (let seed = 1; seed <= runs; seed++) {
    const [first, second] = late(seed * 101, 8000, 7, seed % 2 === 0 ? 1 : -1, 1);
    const found = delayBetween(known(first, second), 20, 450);
    if (!found.known) throw new Error('expected to be known');
    const { delay, interval, phaseAtZero, correlation } = found.value;
    expect(delay).toBeCloseTo(0.007, 4);
    if (interval[0] <= 0.007 && 0.007 <= interval[1]) held++;
    expect(Math.cos(phaseAtZero) * correlation).toBeGreaterThan(0.5);
    expect(Math.sign(correlation)).toBe(seed % 2 === 0 ? 1 : -1);
  }
  expect(held / runs).toBeGreaterThan(0.9);
});

test('law: a delay of part of a sample is the slope of its phase', () => {
  // A sum of many sines, shifted by 2.4 samples exactly.
  const tones = Array.from({ length: 90 }, (_, k) => [0.02 + k * 0.0047, k * k * 0.7] as const);
  const sines = (by: number) =>
    Float64Array.from({ length: 8000 }, (_, n) =>
      tones.reduce((sum, [turns, phase]) => sum + Math.cos(2 * Math.PI * turns * (n - by) + phase), 0),
    );
  const found = delayBetween(known(sines(0), sines(2.4), { length: 512 }), 20, 430);
  // Within a thousandth of a sample; the window lets neighbouring sines into each other.
  expect(Math.abs((found.known ? found.value.delay : 0) - 0.0024)).toBeLessThan(1e-6);
});

test('negative: channels that share nothing have little coherence; of one segment there is none', () => {
  const found = known(evenNoise(1, 50_000), evenNoise(777, 50_000));
  const mean = found.coherence.reduce((sum, x) => sum + x, 0) / found.coherence.length;
  expect(mean).toBeLessThan(2 / found.effectiveAverages);
  const short = crossSpectrum(settings);
  short.take(evenNoise(1, 300), evenNoise(2, 300));
  expect(JSON.stringify(short.result())).toContain('at least 384 samples (it has 300)');
  expect(delayBetween(found, 100, 101).known).toBe(false);
  expect(() => short.take(new Float64Array(3), new Float64Array(4))).toThrow(Broken);
});

test('a segment with a sample that is no number is left out of both channels', () => {
  const [first, second] = late(9, 4000, 0, 1, 0);
  second[1000] = Number.NaN;
  const found = known(first, second);
  expect(found.coherence.every((x) => x > 0.999_999)).toBe(true);
  expect(found.segments).toBeLessThan(known(first, first).segments);
});
