import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Detector, detectors, type Motion, motions, Refusal, shortDetector } from '../../quantity/index.ts';
import { calculate } from '../../working/index.ts';
import { vibrationConversion } from './vibration-conversion.ts';

const units: Readonly<Record<Motion, readonly string[]>> = {
  acceleration: ['m/s2', 'mm/s2', 'g', 'mg', 'in/s2'],
  velocity: ['m/s', 'mm/s', 'um/s', 'in/s', 'ips'],
  displacement: ['m', 'mm', 'um', 'mil', 'in'],
};

interface Answer {
  readonly value: number;
  readonly unit: string;
  readonly detector: Detector;
  readonly shown: string;
  readonly asked: { readonly value: number; readonly in: string };
  readonly holds: string;
}

function converted(from: string, to: string, frequency?: string) {
  const given = frequency === undefined ? { from, to } : { from, to, frequency };
  const calculation = calculate(vibrationConversion, given);
  const result = calculation.results.find((each) => each.name === 'result')!;
  return { calculation, result, answer: result.json as Answer };
}

const written = fc
  .tuple(fc.constantFrom(...motions), fc.nat(4), fc.constantFrom(...detectors))
  .map(([motion, index, detector]) => ({
    motion,
    detector,
    text: `${units[motion][index]} ${shortDetector[detector]}`,
  }));
const amplitude = fc.double({ min: 0.01, max: 1000, noNaN: true });
const frequency = fc.double({ min: 0.1, max: 20_000, noNaN: true });

test('law: there and back gives the level back, over every pair of unit and detector', () => {
  fc.assert(
    fc.property(amplitude, written, written, frequency, (value, a, b, f) => {
      const there = converted(`${value} ${a.text}`, b.text, `${f} Hz`).answer;
      const back = converted(`${there.asked.value} ${b.text}`, a.text, `${f} Hz`).answer;
      expect(back.asked.value / value).toBeCloseTo(1, 11);
      expect(back.detector).toBe(a.detector);
    }),
  );
});

test('law: acceleration to velocity to displacement is acceleration to displacement', () => {
  fc.assert(
    fc.property(amplitude, frequency, (value, f) => {
      const velocity = converted(`${value} g rms`, 'mm/s pk', `${f} Hz`).answer;
      const twice = converted(`${velocity.asked.value} mm/s pk`, 'um pp', `${f} Hz`).answer;
      const once = converted(`${value} g rms`, 'um pp', `${f} Hz`).answer;
      expect(twice.value / once.value).toBeCloseTo(1, 11);
    }),
  );
});

test('law: ten times the level is 20 dB more, whatever the reference', () => {
  const references = ['1 um/s2', '1 nm/s', '1 pm', '1e-6 in/s', '5e-8 m/s'];
  fc.assert(
    fc.property(amplitude, fc.constantFrom(...references), frequency, (value, reference, f) => {
      const to = `dB re ${reference} rms`;
      const one = converted(`${value} mm/s rms`, to, `${f} Hz`).answer;
      const ten = converted(`${value * 10} mm/s rms`, to, `${f} Hz`).answer;
      expect(ten.asked.value - one.asked.value).toBeCloseTo(20, 9);
    }),
  );
});

test('law: the answer says for which waveform it holds', () => {
  const sine = converted('4.5 mm/s rms', 'um pp', '25 Hz');
  expect(sine.calculation.holds).toContain('a single sine');
  expect(sine.result.shown).toBe('81.03 µm pp (a single sine)');
  expect(sine.answer).toMatchObject({
    unit: 'm',
    detector: 'peak-to-peak',
    shown: '81.03 µm pp',
    holds: 'a single sine',
  });
  expect(converted('2.828 mil pp', 'mil pk').answer.holds).toBe('a single sine');
  expect(converted('0.3 in/s pk', 'mm/s pk').result.shown).toBe('7.62 mm/s peak');
  expect(converted('0.3 in/s pk', 'mm/s pk').answer.holds).toBe('any waveform');
  expect(converted('4.5 mm/s rms', 'mm/s derived peak').answer.holds).toBe('any waveform');
  expect(converted('4.5 mm/s rms', 'mm/s pk').answer.holds).toBe('a single sine');
});

test('law: the substituted formula carries the numbers', () => {
  expect(converted('4.5 mm/s rms', 'um pp', '25 Hz').result.substituted).toBe(
    'y = 4.5 mm/s rms · (2π·25 Hz)^−1 · 2.828',
  );
});

test('law: a level over a band is doubted, and loudest where the frequency lies outside it', () => {
  const inside = converted('4.5 mm/s rms 10-1000 Hz', 'um pp', '25 Hz').calculation.findings;
  expect(inside.map((each) => each.rule)).toEqual(['signal/band-level-as-sine']);
  const outside = converted('4.5 mm/s rms 10-1000 Hz', 'um pp', '5 Hz').calculation.findings;
  expect(outside[0]!.limit).toMatch(/outside/);
  expect(converted('4.5 mm/s rms 10-1000 Hz', 'in/s rms').calculation.findings).toEqual([]);
  expect(converted('4.5 mm/s rms', 'um pp', '25 Hz').calculation.findings).toEqual([]);
});

test('negative: what is not a conversion is refused', () => {
  const refused: readonly (readonly [string, string, string | undefined, RegExp])[] = [
    ['4.5 mm/s rms', 'um pp', undefined, /'frequency'/],
    ['4.5 mm/s rms', 'um pp', '0 Hz', /above zero/],
    ['4.5 mm/s rms', 'um pp', '-5 Hz', /below zero/],
    ['4.5 mm/s rms', 'um', '25 Hz', /detector/],
    ['4.5 mm/s rms', 'mV rms', '25 Hz', /voltage/],
    ['4.5 mm/s rms', 'dB rms', '25 Hz', /reference/],
    ['4.5 mm/s rms', '3 um pp', '25 Hz', /Only the unit/],
    ['4.5 mm/s rms', 'um pp 10-1000 Hz', '25 Hz', /band belongs/],
    ['4.5 mm/s', 'um pp', '25 Hz', /detector is missing/],
    ['0 mm/s rms', 'dB re 1 nm/s rms', '25 Hz', /above zero/],
    ['4.5 mm/s rms', '', '25 Hz', /detector/],
  ];
  for (const [from, to, f, why] of refused) {
    const act = () => converted(from, to, f);
    expect(act, `${from} to ${to}`).toThrow(Refusal);
    expect(act, `${from} to ${to}`).toThrow(why);
  }
});
