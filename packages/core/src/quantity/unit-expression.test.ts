import { expect, test } from 'vitest';
import { Broken } from './refusal.ts';
import { meaningFor, meaningsOf, meaningWith, unitFor } from './unit-expression.ts';
import { knownUnitSymbols, unitsCalled } from './units.ts';

test('law: per divides by all that follows, a slash only by what stands next', () => {
  const factor = (text: string) => meaningsOf(text)[0]?.factor;
  expect(factor('mV per in/s')).toBeCloseTo(factor('mV/(in/s)')!, 12);
  expect(meaningsOf('mV/in/s')[0]!.dimension).not.toEqual(meaningsOf('mV per in/s')[0]!.dimension);
  expect(meaningsOf('V per m per s')).toEqual([]);
  expect(meaningsOf('perm')).toEqual([]);
});

test('law: powers are written four ways and stay small', () => {
  for (const text of ['m/s2', 'm/s²', 'm/s^2', 'm s-2', 'm·s⁻²', 'm*s^-2', 'm.s-2']) {
    expect(meaningsOf(text), text).toEqual(meaningsOf('m/s/s'));
  }
  for (const text of ['m^5', 'm^0', 'm0', 'm^-', 'm^x', 'm22', 'm^2^2', 'm**2', '1', '11/s', '1 1/s', '2/s']) {
    if (text === '1') expect(meaningsOf(text)).toHaveLength(1);
    else expect(meaningsOf(text), text).toEqual([]);
  }
});

test('law: an ambiguous symbol keeps each meaning once, however often it stands in a product', () => {
  expect(meaningsOf('g')).toHaveLength(2);
  const many = meaningsOf(Array.from({ length: 11 }, () => 'g').join('*'));
  expect(many.length).toBeLessThanOrEqual(12);
  expect(meaningWith('g', meaningsOf('kg')[0]!.dimension)?.factor).toBe(1e-3);
  expect(meaningFor('g', 'acceleration')?.factor).toBe(9.80665);
  expect(meaningFor('g', 'mass')?.factor).toBe(1e-3);
});

test('law: every known symbol has a meaning, and names of the language have none', () => {
  for (const symbol of knownUnitSymbols) expect(unitsCalled(symbol).length, symbol).toBeGreaterThan(0);
  for (const name of ['constructor', 'toString', 'valueOf', 'hasOwnProperty', '__proto__', 'mconstructor', '']) {
    expect(unitsCalled(name), name).toEqual([]);
  }
});

test('negative: a unit asked for by our own code must be one', () => {
  expect(() => unitFor('mm', 'voltage')).toThrow(Broken);
  expect(unitFor('mm', 'length').factor).toBeCloseTo(1e-3, 15);
});
