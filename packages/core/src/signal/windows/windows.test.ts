import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { windowCalled, windowKinds, windowNames } from './kinds.ts';
import {
  coherentGain,
  highestSideLobe,
  largestDeviation,
  noiseBandwidth,
  overlapCorrelation,
  relativeGain,
  scallopingLoss,
} from './properties.ts';
import { windowDefinitions, windowWeights } from './window.ts';

const stored = JSON.parse(
  readFileSync(new URL('../../../../../evidence/scipy/windows-and-filters.json', import.meta.url), 'utf8'),
);
const periodic = (name: (typeof windowNames)[number], length = 4096) =>
  windowWeights(windowCalled(name), length, 'periodic');

test('law: no two windows share a name, each has a source, and each is found by its name', () => {
  expect(new Set(windowNames).size).toBe(windowKinds.length);
  for (const each of windowKinds) {
    expect(each.sources.length).toBeGreaterThan(0);
    expect(windowCalled(each.kind)).toBe(each);
  }
});

for (const name of windowNames) {
  for (const definition of windowDefinitions) {
    test(`independent: ${name}, ${definition}, as scipy ${stored.versions.scipy} gives it`, () => {
      const theirs = stored.windows[name][definition];
      const ours = windowWeights(windowCalled(name), 32, definition);
      for (const [n, weight] of ours.entries()) expect(weight, `sample ${n}`).toBeCloseTo(theirs.weights32[n], 12);
      for (const length of [1000, 1024]) {
        const weights = windowWeights(windowCalled(name), length, definition);
        const properties = theirs[`length${length}`];
        expect(coherentGain(weights)).toBeCloseTo(properties.coherentGain, 12);
        expect(noiseBandwidth(weights)).toBeCloseTo(properties.noiseBandwidth, 11);
        expect(scallopingLoss(weights)).toBeCloseTo(properties.scallopingLoss, 9);
        expect(Math.abs(highestSideLobe(weights) - properties.highestSideLobe)).toBeLessThan(0.05);
      }
    });
  }
}

/** Side lobe in dB, overlap correlation at 50 and 75 %: arithmetic on the periodic definition, 4096 samples. */
const table = {
  rectangular: ['-13.3', '.500', '.750'],
  hann: ['-31.5', '.1667', '.6592'],
  hamming: ['-42.7', '.234', '.707'],
  blackman: ['-58.1', '.090', '.567'],
  'exact-blackman': ['-68.2', '.100', '.578'],
  'blackman-harris-3-term': ['-70.8', '.096', '.572'],
  'blackman-harris-4-term': ['-92.0', '.038', '.460'],
  'nuttall-4c': ['-98.2', '.042', '.470'],
  'flat-top-5-term': ['-93', '', ''],
  'flat-top-unity-gain': ['-84', '', ''],
  'flat-top-hft95': ['-95', '', ''],
} as const;

test('printed: highest side lobe and overlap correlation (computed by others with numpy from the same definitions)', () => {
  for (const [name, [lobe, half, threeQuarters]] of Object.entries(table)) {
    const weights = periodic(name as keyof typeof table);
    expect(Math.abs(highestSideLobe(weights) - Number(lobe)), name).toBeLessThanOrEqual(halfDigit(lobe));
    if (half === '') continue;
    expect(Math.abs(overlapCorrelation(weights, 0.5) - Number(half)), name).toBeLessThanOrEqual(halfDigit(half));
    expect(Math.abs(overlapCorrelation(weights, 0.75) - Number(threeQuarters)), name).toBeLessThanOrEqual(
      halfDigit(threeQuarters),
    );
  }
});

test('printed: coherent gain and noise bandwidth to four decimals, scalloping (computed by others with numpy)', () => {
  const rows = {
    rectangular: ['1.0000', '1.0000', '3.9224'],
    hann: ['0.5000', '1.5000', '1.4236'],
    hamming: ['0.5400', '1.3628', '1.7514'],
    blackman: ['0.4200', '1.7268', '1.0989'],
    'exact-blackman': ['0.4266', '1.6937', '1.1500'],
    'blackman-harris-3-term': ['0.4232', '1.7085', '1.1287'],
    'blackman-harris-4-term': ['0.3588', '2.0044', '0.8256'],
    'nuttall-4c': ['0.3636', '1.9761', '0.8506'],
    'flat-top-5-term': ['0.2156', '3.7702', '0.0098'],
    'flat-top-unity-gain': ['1.000', '3.7709', '0.0090'],
  } as const;
  for (const [name, [gain, lines, loss]] of Object.entries(rows)) {
    const weights = periodic(name as keyof typeof rows);
    expect(Math.abs(coherentGain(weights) - Number(gain)), name).toBeLessThanOrEqual(halfDigit(gain));
    expect(Math.abs(noiseBandwidth(weights) - Number(lines)), name).toBeLessThanOrEqual(halfDigit(lines));
    expect(Math.abs(scallopingLoss(weights) - Number(loss)), name).toBeLessThanOrEqual(halfDigit(loss));
  }
});

test('printed: HFT95 departs by at most 0.0044 dB between two lines (Heinzel and others 2002, from memory)', () => {
  expect(largestDeviation(periodic('flat-top-hft95', 1024))).toBeCloseTo(0.0044, 4);
  expect(coherentGain(periodic('flat-top-hft95'))).toBeCloseTo(0.2136, 4);
});

test('printed: Harris 1978 (from memory) gives side lobes of whole decibels', () => {
  const rows = { rectangular: -13, hann: -32, hamming: -43, blackman: -58, 'blackman-harris-4-term': -92 } as const;
  for (const [name, lobe] of Object.entries(rows)) {
    // He prints Hann as −32 where its first lobe stands at −31.47: one unit, not half of one.
    expect(Math.abs(highestSideLobe(periodic(name as keyof typeof rows)) - lobe), name).toBeLessThan(1);
  }
});

test('printed: gains in dB and the Hann side lobe (oscilloscope manual, signal library reference; read)', () => {
  const decibels = (name: (typeof windowNames)[number]) => 20 * Math.log10(coherentGain(periodic(name)));
  expect(decibels('hann')).toBeCloseTo(-6.02, 2);
  expect(decibels('hamming')).toBeCloseTo(-5.35, 2);
  expect(-highestSideLobe(periodic('hann'))).toBeCloseTo(31.5, 1);
});

test("negative: Harris's exact Blackman row (.46, 1.57, 1.33) is not what the exact coefficients give", () => {
  const weights = periodic('exact-blackman');
  expect(Math.abs(coherentGain(weights) - 0.46)).toBeGreaterThan(0.005);
  expect(Math.abs(noiseBandwidth(weights) - 1.57)).toBeGreaterThan(0.005);
  expect(Math.abs(scallopingLoss(weights) - 1.33)).toBeGreaterThan(0.005);
});

test('negative: the printed scalloping of Hamming, 1.78 dB, is not that of .54/.46, which is 1.75', () => {
  expect(scallopingLoss(periodic('hamming'))).toBeLessThan(1.775);
});

test("negative: the oscilloscope's flat-top (2.96 lines, −11.05 dB) is none of ours", () => {
  for (const name of ['flat-top-5-term', 'flat-top-unity-gain', 'flat-top-hft95'] as const) {
    expect(Math.abs(noiseBandwidth(periodic(name)) - 2.96)).toBeGreaterThan(0.5);
  }
});

test('negative: a symmetric 64-point Hann gives 1.52381 and a sum of 31.5, not the 1.5 and 32 of the periodic one', () => {
  const symmetric = windowWeights(windowCalled('hann'), 64, 'symmetric');
  expect(noiseBandwidth(symmetric)).toBeCloseTo(1.52381, 5);
  expect(coherentGain(symmetric) * 64).toBeCloseTo(31.5, 10);
  expect(noiseBandwidth(periodic('hann', 64))).toBeCloseTo(1.5, 12);
  expect(coherentGain(periodic('hann', 64)) * 64).toBeCloseTo(32, 10);
});

test('law: noise bandwidth is at least one line, and symmetric over periodic Hann is N/(N − 1) exactly', () => {
  fc.assert(
    fc.property(fc.constantFrom(...windowNames), fc.integer({ min: 16, max: 600 }), (name, length) => {
      expect(noiseBandwidth(periodic(name, length))).toBeGreaterThanOrEqual(1 - 1e-12);
    }),
  );
  fc.assert(
    fc.property(fc.integer({ min: 16, max: 5000 }), (length) => {
      const symmetric = noiseBandwidth(windowWeights(windowCalled('hann'), length, 'symmetric'));
      expect(symmetric / noiseBandwidth(periodic('hann', length))).toBeCloseTo(length / (length - 1), 11);
    }),
    { numRuns: 40 },
  );
});

test('law: a line reads itself fully, and an overlap of one is the same record', () => {
  for (const name of windowNames) {
    expect(relativeGain(periodic(name, 256), 0)).toBeCloseTo(1, 12);
    expect(overlapCorrelation(periodic(name, 256), 1)).toBe(1);
    expect(largestDeviation(periodic(name, 256))).toBeGreaterThanOrEqual(Math.abs(scallopingLoss(periodic(name, 256))));
  }
});

function halfDigit(text: string): number {
  return 0.5 * 10 ** -(text.split('.')[1]?.length ?? 0) * (1 + 1e-9);
}
