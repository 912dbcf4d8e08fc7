import fc from 'fast-check';
import { expect, test } from 'vitest';
import { examplePoint } from '../demand/rules/example.ts';
import { showMeasure } from '../finding/measure.ts';
import { frequencyTable } from '../machine/frequency-table.ts';
import { readTrain } from '../machine/reading.ts';
import { answer, unanswered } from '../quantity/index.ts';
import { type Running, setKinds, settingsFor } from './index.ts';

const compressor = (speed: string) =>
  frequencyTable(
    readTrain({
      of: 'K-11',
      shafts: ['rotor'],
      elements: { wheel: { kind: 'impeller', on: 'rotor', vanes: 17, 'diffuser-vanes': 13 } },
      operation: { shaft: 'rotor', speed },
    }),
  );
const { point } = examplePoint();
const looking = (reference: 'casing' | 'shaft-relative', frequency = 950) => ({
  ...point,
  targets: point.targets.map((each) => ({ ...each, reference, frequencies: answer([frequency]) })),
});
const sets = (reference: 'casing' | 'shaft-relative', speed = '8000..11400 r/min', running: Running = {}) =>
  settingsFor(looking(reference), compressor(speed), running);

test('printed: steady and synchronous settings of reference plant 3 (computed by its author)', () => {
  const [steady, turning] = sets('shaft-relative', '8000..11400 r/min', { runUp: answer(90) }).sets;
  expect(steady).toMatchObject({
    name: 'steady-shaft',
    highestFrequency: 1000,
    lines: 400,
    resolution: 2.5,
    recordLength: 0.4,
  });
  expect(turning).toMatchObject({ name: 'synchronous', samples: 8192, orders: { samplesPerTurn: 128, turns: 64 } });
  expect(turning!.samplingRate).toBeCloseTo(24320, 6);
  expect(turning!.recordLength).toBeCloseTo(0.337, 3);
  expect(turning!.orders!.speedChange! * 60).toBeCloseTo(42.7, 1);
  expect(steady!.reasons.map((each) => showMeasure(each)).join()).toMatch(/below 9000 r\/min/);
});

test('negative: a housing point has no shaft set, a shaft point no velocity set, an order of 221 sets no range', () => {
  expect(sets('casing').sets.map(({ name }) => name)).toEqual(['velocity-spectrum']);
  expect(sets('shaft-relative').sets.map(({ name }) => name)).toEqual(['steady-shaft', 'synchronous']);
  expect(sets('casing').sets[0]!.highestFrequency).toBe(5000);
});

test('negative: without the speed nothing is sampled by the turn, and an unknown run-up is named', () => {
  const open = frequencyTable(
    readTrain({ of: 'K-11', shafts: ['rotor'], elements: {}, operation: { shaft: 'rotor', speed: 'unknown' } }),
  );
  const found = settingsFor(looking('shaft-relative'), open);
  expect(found.sets.map(({ name }) => name)).toEqual(['steady-shaft']);
  expect(found.unknown.length).toBeGreaterThanOrEqual(2);
  const unknown = sets('shaft-relative', '8000..11400 r/min', { runUp: unanswered([{ of: 'K-11', what: 'run-up' }]) });
  expect(unknown.unknown).toEqual(['run-up: its time is not known']);
  expect(unknown.sets.find(({ name }) => name === 'synchronous')!.orders).not.toHaveProperty('speedChange');
});

test('negative: a machine that is stated at rest has no records by the turn, and nothing breaks', () => {
  const found = settingsFor(looking('shaft-relative', 0), compressor('0 r/min'));
  expect(found.sets).toEqual([]);
  expect(found.unknown).toEqual(['samples by the turn: the shaft does not turn']);
});

test('law: whatever the speed, whirl and half order lie three lines apart and turns times resolution is one order', () => {
  fc.assert(
    fc.property(fc.integer({ min: 600, max: 30_000 }), (speed) => {
      const [steady, turning] = sets('shaft-relative', `${speed} r/min`).sets;
      expect(steady!.resolution).toBeLessThanOrEqual((0.05 * speed) / 60 / 3 + 1e-12);
      expect(turning!.orders!.turns * turning!.orders!.resolution).toBe(1);
      expect(turning!.samplingRate * turning!.recordLength).toBeCloseTo(turning!.samples, 6);
    }),
    { numRuns: 40 },
  );
  expect(new Set(setKinds.map(({ kind }) => kind)).size).toBe(setKinds.length);
});
