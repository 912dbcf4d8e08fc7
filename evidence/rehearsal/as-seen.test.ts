import { expect, test } from 'vitest';
import {
  asSeen,
  type DesignedMachine,
  type DesignedPoint,
  level,
  type RehearsalScript,
  rehearsedMotion,
  throughChain,
} from '../../packages/core/src/index.ts';
import { known } from '../reading.ts';
import { chainedPoints } from './chains.ts';

const { machine, point } = chainedPoints().find(({ point: each }) =>
  each.point.of.endsWith('pump-drive-end-horizontal'),
)!;

const plain: RehearsalScript = {
  seconds: 4,
  rate: 51_200,
  seed: 2,
  course: { is: 'steady', at: 'highest' },
  healthy: 0.5,
  faults: [],
  background: [{ name: 'floor', level: level('acceleration', 0.02, 'rms'), band: { low: 5, high: 10_000 } }],
};

function seen(script: RehearsalScript, [of, at]: readonly [DesignedMachine, DesignedPoint] = [machine, point]) {
  const motion = known(rehearsedMotion(of, at, script));
  const record = known(throughChain(at.appraisal!.prediction, motion, { seed: 1, recordRate: 25_600 }));
  return asSeen(record, of, at, motion, 10);
}

test('a spall stands in the envelope at its own frequency with its harmonics, and nowhere else', () => {
  const size = level('acceleration', 5, 'peak');
  const { lines } = known(seen({ ...plain, faults: [{ kind: 'outer-ring', at: 'pump-drive-end', size }] }).envelope);
  expect(lines.filter((each) => each.seen).map((each) => each.name)).toEqual(['pump-drive-end/outer-ring']);
  const struck = lines.find((each) => each.seen)!;
  // 10 elements at 0.4131 of the speed of 24.77 Hz: as the machine tells, worked out apart in evidence/raw-water-pump.
  const row = machine.frequencies.rows.find(({ line }) => line.name === struck.name)!;
  expect(struck.frequency).toBeCloseTo(known(row.cells.find(({ state }) => state === 'highest')!.frequency), 6);
  expect(struck.harmonics).toBe(4);
});

test.each([1, 2, 3, 4, 5, 6])('a healthy machine shows no bearing line in its envelope: draw %i', (seed) => {
  const { lines, band, because } = known(seen({ ...plain, seed }).envelope);
  expect(lines.length).toBeGreaterThan(3);
  expect(lines.filter((each) => each.seen)).toEqual([]);
  expect(band.low).toBeLessThan(band.high);
  expect(because).toContain('bearing bursts');
});

test('law: a spall of twice the size stands about six decibels higher in the waveform, once it is well above the floor', () => {
  const peak = (size: number) => {
    const faults = [{ kind: 'outer-ring', at: 'pump-drive-end', size: level('acceleration', size, 'peak') }];
    return known(seen({ ...plain, healthy: 0, background: [], faults }).overall).peak;
  };
  expect(20 * Math.log10(peak(20) / peak(10))).toBeCloseTo(6.02, 1);
});

test('along a run-up the lines of the machine are followed, not smeared', () => {
  const found = (course: RehearsalScript['course']) =>
    known(seen({ ...plain, course }).targets.find((each) => each.target === 'vane pass')!.seen).found.value;
  const steady = found(plain.course);
  expect(found({ is: 'run-up', from: 20, to: 'highest' }) / steady).toBeGreaterThan(0.8);
});

test('negative: of a machine that stands no target is looked for, and its envelope has no line', () => {
  const still = seen({ ...plain, course: { is: 'standstill' }, healthy: 0, background: [] });
  expect(still.targets.every((each) => !each.seen.known)).toBe(true);
  expect(known(still.envelope).lines).toEqual([]);
});
