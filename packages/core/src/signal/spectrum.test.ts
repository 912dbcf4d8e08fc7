import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { amplitudeSpectrum, bandRms } from './spectrum.ts';
import { windowCalled, windowNames } from './windows/kinds.ts';

const stored = JSON.parse(
  readFileSync(new URL('../../../../evidence/scipy/windows-and-filters.json', import.meta.url), 'utf8'),
).transform;

function sine(length: number, lines: number, amplitude = 1, phase = 0.3): Float64Array {
  return Float64Array.from({ length }, (_, n) => amplitude * Math.sin((2 * Math.PI * lines * n) / length + phase));
}

test('independent: amplitude lines and a band r.m.s. as scipy gives them for the same record', () => {
  const spectrum = amplitudeSpectrum(stored.record, stored.samplingRate, windowCalled('hann'));
  for (const [k, power] of stored.hannPowerSpectrum.entries()) {
    const meanSquare = k === 0 || k === 128 ? spectrum.amplitudes[k]! ** 2 : spectrum.amplitudes[k]! ** 2 / 2;
    expect(meanSquare).toBeCloseTo(power, 12);
  }
  expect(bandRms(spectrum, 200, 800)).toBeCloseTo(stored.bandRmsFromDensity, 12);
});

test('printed: a sine half a line off recovers its r.m.s. within 1e-3 when its lines are summed', () => {
  for (const name of windowNames) {
    const spectrum = amplitudeSpectrum(sine(1024, 100.5), 1024, windowCalled(name));
    expect(Math.abs(bandRms(spectrum, 0, 512) / Math.SQRT1_2 - 1), name).toBeLessThan(1e-3);
    // The side lobes of the rectangular window fall so slowly that forty lines do not hold them.
    if (name === 'rectangular') continue;
    expect(Math.abs(bandRms(spectrum, 80, 121) / Math.SQRT1_2 - 1), `${name}, its own lines`).toBeLessThan(1e-3);
  }
});

test('negative: without the noise bandwidth the same sum is too large by its root', () => {
  const spectrum = amplitudeSpectrum(sine(1024, 100.5), 1024, windowCalled('hann'));
  const sumOfSquares = spectrum.amplitudes.reduce((total, each) => total + each * each, 0);
  expect(Math.sqrt(sumOfSquares / 2) / Math.SQRT1_2).toBeCloseTo(Math.sqrt(1.5), 3);
});

test('law: a sine on a line reads its amplitude with every window, and half a line off it reads low by the scalloping', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...windowNames),
      fc.integer({ min: 20, max: 230 }),
      fc.double({ min: 0.001, max: 1000, noNaN: true }),
      fc.double({ min: 0, max: 6.28, noNaN: true }),
      (name, line, amplitude, phase) => {
        const spectrum = amplitudeSpectrum(sine(512, line, amplitude, phase), 512, windowCalled(name));
        // The mirror line at minus f leaks in through the side lobes: least −60 dB here, far less for most windows.
        expect(spectrum.amplitudes[line]! / amplitude).toBeCloseTo(1, 4);
        expect(spectrum.resolution).toBe(1);
      },
    ),
  );
  const half = amplitudeSpectrum(sine(4096, 1000.5), 4096, windowCalled('hann'));
  expect(-20 * Math.log10(half.amplitudes[1000]!)).toBeCloseTo(1.4236, 3);
});

test('law: the mean stands on line 0, and is not doubled', () => {
  const record = new Float64Array(256).fill(3);
  for (const name of windowNames) {
    const spectrum = amplitudeSpectrum(record, 256, windowCalled(name));
    expect(spectrum.amplitudes[0]).toBeCloseTo(3, 10);
    expect(bandRms(spectrum, 0, 128)).toBeCloseTo(3, 10);
  }
});

test('law: bands that touch without sharing a line add up as squares', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 500 }), (cut) => {
      const spectrum = amplitudeSpectrum(sine(1024, 77.3), 1024, windowCalled('hann'));
      const parts = Math.hypot(bandRms(spectrum, 0, cut), bandRms(spectrum, cut + 1, 512));
      expect(parts).toBeCloseTo(bandRms(spectrum, 0, 512), 12);
    }),
  );
});
