import { expect, test } from 'vitest';
import {
  changeOf,
  type DefectKindName,
  defectKinds,
  exchanged,
  level,
  Refusal,
  type RehearsedRecord,
  rehearsedMotion,
  throughChain,
} from '../../packages/core/src/index.ts';
import { known } from '../reading.ts';
import { chainedPoints, silent } from './chains.ts';

const points = chainedPoints();
const at = (of: string) => points.find((each) => each.name === of)!;
const recordRate = 25_600;

/** A healthy pump with some unbalance, through a chain with a defect or without. */
function record(of: string, defect?: DefectKindName, size?: number): RehearsedRecord {
  const { machine, point } = at(of);
  const motion = known(
    rehearsedMotion(machine, point, {
      ...silent,
      seconds: 2,
      lead: 1,
      rate: 4 * recordRate,
      course: { is: 'steady', at: 'highest' },
      faults: [{ kind: 'unbalance', at: machine.stated.train.shafts[0]!, size: level('velocity', 5e-3, 'rms') }],
      background: [{ name: 'floor', level: level('acceleration', 0.5, 'rms'), band: { low: 10, high: 20_000 } }],
    }),
  );
  const defects = defect === undefined ? [] : [{ kind: defect, ...(size === undefined ? {} : { size }) }];
  return known(throughChain(point.appraisal!.prediction, motion, { seed: 2, recordRate, coupling: 'direct', defects }));
}

const route = 'P-301/pump-drive-end-horizontal';
const rms = (samples: Float64Array) => {
  const mean = samples.reduce((sum, each) => sum + each, 0) / samples.length;
  return Math.sqrt(samples.reduce((sum, each) => sum + (each - mean) ** 2, 0) / samples.length);
};
const plain = record(route);
const plainLoop = record('P-301/pump-drive-end-loop');

test.each(defectKinds.map(({ kind }) => kind))('every defect changes the record: %s', (kind) => {
  // A record of a slow sensor shows what a loop does; slew and overload ask for more than this pump makes.
  const loop = kind === 'loop-compliance';
  const size = { 'cable-slew': 1e-5, capacitance: 1e-5, 'loop-compliance': 0.0045 }[kind as string];
  const own = record(loop ? 'P-301/pump-drive-end-loop' : route, kind, size);
  const before = loop ? plainLoop : plain;
  if (kind === 'bias-off-centre') expect(known(own.direct)).toBeCloseTo(3.5, 9);
  const moved = own.motion.reduce((sum, each, index) => sum + (each - before.motion[index]!) ** 2, 0);
  expect(moved).toBeGreaterThan(0);
});

test('printed: a wrong sensitivity, a confused detector and a turned pair have exactly their ratio', () => {
  const ac = (each: RehearsedRecord) => rms(each.volts);
  expect(ac(record(route, 'sensitivity', 10)) / ac(plain)).toBeCloseTo(10, 9);
  expect(rms(record(route, 'detector-confusion').motion) / rms(plain.motion)).toBeCloseTo(Math.SQRT2, 9);
  const turned = record(route, 'polarity');
  const rest = known(plain.direct);
  expect(turned.volts[1000]! - rest).toBeCloseTo(rest - plain.volts[1000]!, 9);
});

test('law: a short leaves its voltage and nothing that swings', () => {
  const dead = record(route, 'bias-short');
  expect(known(dead.direct)).toBe(0.4);
  expect(rms(dead.volts)).toBeLessThan(rms(plain.volts) / 100);
});

test('law: a ski slope decays with the lower corner of the transducer', () => {
  const slope = record(route, 'ski-slope', 1);
  const off = (seconds: number) => {
    const index = Math.round(seconds * recordRate);
    return slope.volts[index]! - plain.volts[index]!;
  };
  // ACC-100 has its corner at 0.5 Hz: τ = 1/(2π·0.5 Hz) = 0.318 s.
  expect(off(0.6) / off(0.2)).toBeCloseTo(Math.exp(-0.4 * Math.PI), 2);
});

test('printed: a carrier of 4 kHz recorded at 5.12 kHz without a filter appears at 1.12 kHz', () => {
  const { machine, point } = at(route);
  const script = {
    ...silent,
    seconds: 2,
    lead: 1,
    rate: 8 * 5120,
    course: { is: 'steady', at: 'highest' } as const,
    faults: [{ kind: 'converter-carrier', at: 'motor', size: level('acceleration', 5, 'peak') }],
  };
  const motion = known(rehearsedMotion(machine, point, script));
  const through = (defects: readonly { readonly kind: string }[]) =>
    known(throughChain(point.appraisal!.prediction, motion, { seed: 1, recordRate: 5120, defects }));
  const sizeAt = ({ motion: samples, rate }: RehearsedRecord, frequency: number) => {
    let [re, im] = [0, 0];
    samples.forEach((each, index) => {
      re += each * Math.cos((2 * Math.PI * frequency * index) / rate);
      im += each * Math.sin((2 * Math.PI * frequency * index) / rate);
    });
    return (2 * Math.hypot(re, im)) / samples.length;
  };
  expect(sizeAt(through([{ kind: 'missing-filter' }]), 1120)).toBeGreaterThan(4.5);
  expect(sizeAt(through([]), 1120)).toBeLessThan(0.01);
});

test('two channels exchanged; a word that is no defect is refused by name', () => {
  expect(exchanged(['x', 'y', 'z'], 0, 1)).toEqual(['y', 'x', 'z']);
  expect(() => changeOf({ kind: 'mains-hmu' })).toThrow(Refusal);
});
