import { expect, test } from 'vitest';
import { showMeasure } from '../finding/measure.ts';
import { Refusal } from '../quantity/index.ts';
import { bearingExercise } from '../source/bearing-exercise.ts';
import { clause, showClause } from '../source/source.ts';
import { calculate } from '../working/working.ts';
import { beltPass } from './workings/belt.ts';
import { gearMesh } from './workings/gear-mesh.ts';
import { inductionMotorFrequencies } from './workings/induction-motor.ts';
import { rollingBearingFrequencies } from './workings/rolling-bearing-frequencies.ts';

const driveEnd = {
  elements: '9',
  'element-diameter': '0.3126 in',
  'pitch-diameter': '1.537 in',
  'contact-angle': '0 deg',
  'shaft-speed': '1 Hz',
};

function hertz(
  working: Parameters<typeof calculate>[0],
  given: Readonly<Record<string, string>>,
  output: string,
): number {
  const result = calculate(working, given).results.find((each) => each.name === output)!;
  return (result.json as { value: number }).value;
}

test('trap: the "rolling element" 4.7135 of a published bearing table is twice the spin, and both are named', () => {
  expect(hertz(rollingBearingFrequencies, driveEnd, 'element-spin')).not.toBeCloseTo(4.7135, 2);
  expect(hertz(rollingBearingFrequencies, driveEnd, 'element-spin-twice')).toBeCloseTo(4.7135, 3);
  expect(rollingBearingFrequencies.outputs.elementSpin.field.meaning).toContain('not the defect line');
});

test('trap: a pitch diameter of 38.5 mm "corrected" from another bearing gives 3.572, not the published 3.5848', () => {
  const corrected = { ...driveEnd, 'element-diameter': '7.9375 mm', 'pitch-diameter': '38.5 mm' };
  expect(hertz(rollingBearingFrequencies, corrected, 'outer-ring')).toBeCloseTo(3.572, 3);
  expect(Math.abs(hertz(rollingBearingFrequencies, corrected, 'outer-ring') - 3.5848)).toBeGreaterThan(0.01);
});

test('trap: a contact angle in degrees handed to the cosine as radians would give cos 15 = −0.76', () => {
  const angular = {
    elements: '8',
    'element-diameter': '2 mm',
    'pitch-diameter': '12 mm',
    'contact-angle': '15 deg',
    'shaft-speed': '25 Hz',
  };
  expect(hertz(rollingBearingFrequencies, angular, 'outer-ring')).toBeCloseTo(83.9012, 4);
  expect(hertz(rollingBearingFrequencies, angular, 'outer-ring')).toBeLessThan(100);
});

test('trap: the formula gcd × pinion speed, as a public glossary prints it, is not the hunting tooth', () => {
  for (const [z1, z2, speed, wrong] of [
    ['23', '67', '1800 r/min', 30],
    ['20', '60', '1800 r/min', 600],
    ['18', '54', '3600 r/min', 1080],
  ] as const) {
    const given = { 'pinion-teeth': z1, 'wheel-teeth': z2, 'pinion-speed': speed };
    expect(Math.abs(hertz(gearMesh, given, 'hunting-tooth') / wrong - 1)).toBeGreaterThan(0.9);
  }
});

test('trap: a belt table that prints 148 r/min means 1480: the misprinted row is ten times lower', () => {
  const row = (speed: string) =>
    hertz(beltPass, { 'pulley-diameter': '0.22 m', 'pulley-speed': speed, 'belt-length': '3.1 m' }, 'belt-pass');
  expect(row('1480 r/min') / row('148 r/min')).toBeCloseTo(10, 10);
});

const exercise = showClause(clause(bearingExercise));

test(`trap: 27 elements of 20 mm on a 99 mm pitch circle, as in ${exercise}, compute but are doubted`, () => {
  const calculation = calculate(rollingBearingFrequencies, {
    elements: '27',
    'element-diameter': '20 mm',
    'pitch-diameter': '99 mm',
    'contact-angle': '11 deg',
    'shaft-speed': '2415 r/min',
  });
  expect(calculation.findings.map((each) => each.rule)).toEqual(['machine/elements-fit-pitch-circle']);
  // The exercise prints k = 0.1985; from its own inputs k is 0.1983.
  const k = calculation.results.find((each) => each.name === 'diameter-ratio')!.json as { value: number };
  expect(k.value).toBeCloseTo(0.19831, 5);
});

test('law: an outer ring that turns makes the cage faster than half of the speed (formula sheet, from memory)', () => {
  const outer = { ...driveEnd, 'shaft-speed': '0 Hz', 'outer-speed': '1 Hz' };
  expect(hertz(rollingBearingFrequencies, outer, 'cage')).toBeGreaterThan(0.5);
  expect(hertz(rollingBearingFrequencies, driveEnd, 'cage')).toBeLessThan(0.5);
});

test('computed here: separating 2 × speed from 2 × line of a 2-pole motor at 3580 r/min and 60 Hz is 0.667 Hz', () => {
  const given = { 'line-frequency': '60 Hz', poles: '2', speed: '3580 r/min' };
  expect(hertz(inductionMotorFrequencies, given, 'pole-pass')).toBeCloseTo(0.667, 3);
});

test('impossible inputs are refused by name, doubtful ones are questioned', () => {
  expect(() => calculate(rollingBearingFrequencies, { ...driveEnd, 'element-diameter': '1.6 in' })).toThrow(Refusal);
  expect(() => calculate(rollingBearingFrequencies, { ...driveEnd, 'element-diameter': '1.6 in' })).toThrow(
    /exchanged/,
  );
  expect(() => calculate(rollingBearingFrequencies, { ...driveEnd, 'contact-angle': '0.26' })).toThrow(Refusal);
  expect(() => calculate(gearMesh, { 'pinion-teeth': '0', 'wheel-teeth': '84', 'pinion-speed': '1 Hz' })).toThrow(
    Refusal,
  );
  expect(() =>
    calculate(inductionMotorFrequencies, { 'line-frequency': '50 Hz', poles: '3', speed: '990 r/min' }),
  ).toThrow(/even/);
  expect(() => calculate(beltPass, { 'pulley-diameter': '0 m', 'pulley-speed': '1 Hz', 'belt-length': '1 m' })).toThrow(
    Refusal,
  );
  expect(() => calculate(beltPass, { 'pulley-diameter': '1 m', 'pulley-speed': '1 Hz', 'belt-length': '1 m' })).toThrow(
    /centre distance/,
  );
  const doubtful = calculate(inductionMotorFrequencies, { 'line-frequency': '50 Hz', poles: '4', speed: '1290 r/min' });
  expect(doubtful.findings.map((each) => each.rule)).toEqual(['machine/poles-against-speed']);
  const six = calculate(inductionMotorFrequencies, { 'line-frequency': '50 Hz', poles: '4', speed: '980 r/min' });
  expect(showMeasure(six.findings[0]!.asks ?? '')).toBe('Has the motor 6 poles?');
});
