import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Broken, type Curve, Refusal, standardGravity } from '../../quantity/index.ts';
import { calculate } from '../../working/index.ts';
import {
  bandNoise,
  densityAt,
  type Integrations,
  lineNoise,
  noiseInBand,
  usableFrequency,
  whiteBandNoise,
} from './index.ts';

interface Stored {
  readonly bands: readonly {
    readonly name: string;
    readonly sensor: readonly (readonly [number, number])[];
    readonly electronics: readonly (readonly [number, number])[] | null;
    readonly sensitivity: number;
    readonly low: number;
    readonly high: number;
    readonly integrations: Integrations;
    readonly rms: number;
  }[];
  readonly limits: readonly {
    readonly quality: number | null;
    readonly low: number;
    readonly high: number;
    readonly ratio: number;
  }[];
}

const stored: Stored = JSON.parse(
  readFileSync(new URL('../../../../../evidence/chain-formulas/independent.json', import.meta.url), 'utf8'),
);

const curve = (points: readonly (readonly [number, number])[], factor: number): Curve => ({
  frequencies: points.map(([f]) => f),
  densities: points.map(([, n]) => n * factor),
});

test('independent: noise in a band of sensor and input agrees with scipy quadrature to 1e-4', () => {
  for (const each of stored.bands) {
    const sensor = curve(each.sensor, 1e-6 * standardGravity);
    const input =
      each.electronics === null ? undefined : curve(each.electronics, (1e-6 / each.sensitivity) * standardGravity);
    const density = (f: number) => Math.hypot(densityAt(sensor, f), input === undefined ? 0 : densityAt(input, f));
    const rms = bandNoise(density, each.low, each.high, each.integrations);
    expect(Math.abs(rms / each.rms - 1), each.name).toBeLessThan(1e-5);
  }
});

test('printed: noise of the accelerometer with the collector in reference plant 1, within the 5 % its author allows', () => {
  const rms = stored.bands.map((each) => {
    const sensor = curve(each.sensor, 1);
    const input = curve(each.electronics ?? [], 1 / each.sensitivity);
    const density = (f: number) => Math.hypot(densityAt(sensor, f), each.electronics ? densityAt(input, f) : 0);
    return bandNoise(density, each.low, each.high, each.integrations) * 1e-6;
  });
  // 0.0156 mm/s rms in 2..1000 Hz and 0.000235 g rms in 2..10 kHz.
  expect(Math.abs((rms[0]! * standardGravity * 1000) / 0.0156 - 1)).toBeLessThan(0.05);
  expect(Math.abs(rms[1]! / 0.000235 - 1)).toBeLessThan(0.05);
});

test('independent: usable frequency agrees with scipy root finding on the response', () => {
  for (const { quality, low, high, ratio } of stored.limits) {
    const ours = usableFrequency(1, quality ?? undefined, { low, high });
    expect(Math.abs(ours / ratio - 1), `Q ${quality}, ${low}..${high}`).toBeLessThan(1e-9);
  }
});

test('law: white noise by quadrature is the closed form, whatever the band and the integrations', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.01, max: 1000, noNaN: true }),
      fc.double({ min: 1.001, max: 10_000, noNaN: true }),
      fc.constantFrom<Integrations>(0, 1, 2),
      (low, ratio, k) => {
        const closed = whiteBandNoise(3e-5, { low, high: low * ratio }, k);
        expect(bandNoise(() => 3e-5, low, low * ratio, k) / closed).toBeCloseTo(1, 5);
      },
    ),
    { numRuns: 60 },
  );
});

test('law: two bands side by side add as squares; a narrow resonance is not stepped over', () => {
  const peak = (f: number) => 1 / Math.hypot(1 - (f / 700) ** 2, f / 700 / 40);
  const [whole, left, right] = [bandNoise(peak, 5, 5000), bandNoise(peak, 5, 703), bandNoise(peak, 703, 5000)];
  expect(whole / Math.hypot(left, right)).toBeCloseTo(1, 5);
  // One degree of freedom over all frequencies: ∫|H|² df = π·f_n·Q/2, any text on random vibration.
  expect(bandNoise(peak, 1e-3, 1e7) / Math.sqrt((Math.PI / 2) * 700 * 40)).toBeCloseTo(1, 4);
});

test('law: the density passes through its points, is a power law between, goes on below and stays above', () => {
  const points = curve(
    [
      [1, 30],
      [10, 8],
      [100, 3.5],
    ],
    1,
  );
  for (const [i, f] of points.frequencies.entries()) expect(densityAt(points, f)).toBeCloseTo(points.densities[i]!, 12);
  expect(densityAt(points, Math.sqrt(10))).toBeCloseTo(Math.sqrt(30 * 8), 12);
  expect(densityAt(points, 0.1)).toBeCloseTo((30 * 30) / 8, 12);
  expect(densityAt(points, 1e5)).toBe(3.5);
  expect(densityAt({ frequencies: [10], densities: [2] }, 0.01)).toBe(2);
});

test('printed: line noise of a Hann window, 1.5 lines (Harris 1978, Table I, from memory)', () => {
  expect(lineNoise(2, 0.5)).toBeCloseTo(2 * Math.sqrt(0.75), 12);
  expect(lineNoise(2, 0.5, 1)).toBeCloseTo(Math.SQRT2, 12);
});

test('negative: a band from zero, upside down or without width is refused', () => {
  expect(() => bandNoise(() => 1, 0, 10)).toThrow(Refusal);
  expect(() => bandNoise(() => 1, 10, 1)).toThrow(Refusal);
  expect(bandNoise(() => 1, 10, 10)).toBe(0);
  expect(bandNoise(() => 0, 1, 10)).toBe(0);
  expect(() => bandNoise(() => Number.NaN, 1, 10)).toThrow(Broken);
  expect(() => calculate(noiseInBand, { density: '1 ug/rtHz', band: '10 Hz', integrations: '1' })).toThrow(Refusal);
  expect(() => calculate(noiseInBand, { density: '1 ug/rtHz', band: '0..10 Hz', integrations: '1' })).toThrow(Refusal);
  expect(() => calculate(noiseInBand, { density: '1 ug/rtHz', band: '1..10 Hz', integrations: '3' })).toThrow(Refusal);
});
