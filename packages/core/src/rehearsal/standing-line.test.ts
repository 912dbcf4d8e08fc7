import { expect, test } from 'vitest';
import { amplitudeSpectrum } from '../signal/spectrum.ts';
import { hann } from '../signal/windows/hann.ts';
import { randomFrom } from '../uncertainty/random.ts';
import { followedLine, steadyLine } from './standing-line.ts';

const rate = 4096;
const length = 2 ** 15;
const random = randomFrom(5);
const noise = Float64Array.from({ length }, () => 0.01 * random.normal());
const running = (cycles: (n: number) => number, peak: number) =>
  noise.map((each, n) => each + peak * Math.cos(2 * Math.PI * cycles(n)));

test('law: a line at one speed is the same whether it is read off the spectrum or followed', () => {
  const frequency = 100 * (rate / length) * 4;
  const cycles = (n: number) => (frequency * n) / rate;
  const samples = running(cycles, 0.5);
  const read = steadyLine(amplitudeSpectrum(samples, rate, hann), frequency, rate / 2)!;
  const followed = followedLine(samples, cycles);
  expect(read.found).toBeCloseTo(0.5 / Math.SQRT2, 3);
  expect(followed.found).toBeCloseTo(read.found, 6);
  expect(followed.decibels).toBeCloseTo(read.decibels, 1);
});

test('law: a line that sweeps is followed at its height, and lost in the spectrum', () => {
  const [from, to] = [50, 150];
  const seconds = length / rate;
  const cycles = (n: number) => (from * n) / rate + ((to - from) * (n / rate) ** 2) / (2 * seconds);
  const samples = running(cycles, 0.5);
  expect(followedLine(samples, cycles).found).toBeCloseTo(0.5 / Math.SQRT2, 2);
  expect(steadyLine(amplitudeSpectrum(samples, rate, hann), to, rate / 2)!.found).toBeLessThan(0.1);
});

test('law: in noise alone nothing stands ten decibels out, at 200 places', () => {
  const spectrum = amplitudeSpectrum(noise, rate, hann);
  const standing = Array.from({ length: 200 }, (_, k) => steadyLine(spectrum, 50 + 9.7 * k, rate / 2)!.decibels);
  expect(standing.filter((each) => each >= 10).length).toBeLessThanOrEqual(1);
  // Noise of one line of a Hann window, 1.5 lines wide: σ·√(2·1.5/N).
  const level = steadyLine(spectrum, 1000, rate / 2)!.noise;
  expect(level / (0.01 * Math.sqrt((2 * 1.5) / length))).toBeCloseTo(1, 0);
});

test('negative: a place at an end of the spectrum is no line', () => {
  const spectrum = amplitudeSpectrum(noise, rate, hann);
  expect(steadyLine(spectrum, 0, rate / 2)).toBeUndefined();
  expect(steadyLine(spectrum, rate / 2, rate / 2)).toBeUndefined();
});
