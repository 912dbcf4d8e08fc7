import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Answer } from '../../quantity/index.ts';
import { measured } from './gathering.ts';
import { added, blocksOf, evenNoise, madeTone } from './made-record.ts';
import { phaseBetween, type Tone, toneAt, toneNear, wrapped } from './tone.ts';

const stored = JSON.parse(
  readFileSync(new URL('../../../../../evidence/scipy/measures.json', import.meta.url), 'utf8'),
).tone;

function known(found: Answer<Tone>): Tone {
  if (!found.known) throw new Error(`expected to be known: ${JSON.stringify(found.missing)}`);
  return found.value;
}

test('independent: fits of a sine in noise and their standard errors as scipy gives them', () => {
  const record = added(
    madeTone(1000, 0.0437, 2.5, 0.7),
    evenNoise(5, 1000).map((x) => 0.3 * x + 4),
  );
  const three = known(measured(toneAt(stored.given, 1000), record));
  const four = known(toneNear(record, 1000));
  for (const [ours, theirs] of [
    [three, stored.three],
    [four, stored.four],
  ] as const) {
    for (const name of ['amplitude', 'phase', 'mean', 'residual'] as const) {
      expect(ours[name], name).toBeCloseTo(theirs[name], 7);
    }
    for (const name of ['amplitudeError', 'phaseError', 'meanError'] as const) {
      expect(ours[name] / theirs[name], name).toBeCloseTo(1, 4);
    }
  }
  expect(four.frequency).toBeCloseTo(stored.four.frequency, 7);
  expect(four.frequencyError / stored.four.frequencyError).toBeCloseTo(1, 4);
});

test('law: a sine without noise is found exactly, wherever it stands between lines', () => {
  const turns = fc.double({ min: 0.01, max: 0.45, noNaN: true });
  fc.assert(
    fc.property(turns, fc.double({ min: -3, max: 3, noNaN: true }), (place, phase) => {
      const record = madeTone(700, place, 1.5, phase).map((x) => x - 20);
      const three = known(measured(toneAt(place * 100, 100), record));
      const four = known(toneNear(record, 100));
      for (const tone of [three, four]) {
        expect(tone.amplitude).toBeCloseTo(1.5, 6);
        expect(Math.abs(wrapped(tone.phase - phase))).toBeLessThan(1e-5);
        expect(tone.mean).toBeCloseTo(-20, 6);
      }
      expect(four.frequency).toBeCloseTo(place * 100, 6);
    }),
    { numRuns: 60 },
  );
});

test('law: of many noisy records the stated errors are those that occur', () => {
  const [amplitudes, phases, frequencies]: [number[], number[], number[]] = [[], [], []];
  for (let seed = 1; seed <= 300; seed++) {
    const record = added(madeTone(400, 0.0623, 1, 0.4), evenNoise(seed * 31_337, 400));
    const tone = known(toneNear(record, 1, 0.062));
    amplitudes.push((tone.amplitude - 1) / tone.amplitudeError);
    phases.push((tone.phase - 0.4) / tone.phaseError);
    frequencies.push((tone.frequency - 0.0623) / tone.frequencyError);
  }
  for (const ratios of [amplitudes, phases, frequencies]) {
    const inside = ratios.filter((x) => Math.abs(x) < 1.96).length / ratios.length;
    // 95 % of 300 is within 91 to 98 % in all but one case of two hundred.
    expect(inside).toBeGreaterThan(0.91);
    expect(inside).toBeLessThan(0.985);
  }
});

test('law: the phase between two channels is that of the second over the first, and a cut changes nothing', () => {
  const [a, b] = [madeTone(500, 0.031, 1, 2.9), madeTone(500, 0.031, 7, -2.9)];
  const pieces = toneAt(31, 1000);
  for (const block of blocksOf(a, 1, 30, 7)) pieces.take(block);
  const whole = measured(toneAt(31, 1000), a);
  expect(pieces.result()).toEqual(whole);
  const between = phaseBetween(known(whole), known(measured(toneAt(31, 1000), b)));
  expect(between.phase).toBeCloseTo(2 * Math.PI - 5.8, 7);
});

test('what cannot be fitted says what would be needed', () => {
  expect(JSON.stringify(measured(toneAt(600, 1000), madeTone(100, 0.1)))).toContain(
    'sampling rate of more than 1200 Hz',
  );
  expect(JSON.stringify(measured(toneAt(1, 1000), madeTone(100, 0.1)))).toContain('at least 2000 samples (it has 100)');
  expect(toneNear(Float64Array.of(1, 2), 1).known).toBe(false);
  expect(toneNear(new Float64Array(100), 1).known).toBe(false);
  expect(
    toneNear(
      Float64Array.from({ length: 50 }, () => Number.NaN),
      1,
    ).known,
  ).toBe(false);
});
