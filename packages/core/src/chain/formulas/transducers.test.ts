import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Refusal } from '../../quantity/index.ts';
import { calculate } from '../../working/index.ts';
import {
  chainWorkings,
  coilResponse,
  converterCorner,
  converterGainAtRest,
  converterNoise,
  converterNoiseGain,
  gapOfVoltage,
  gapVoltage,
  largestExtent,
  type OrbitPoint,
  peakToPeak,
  shuntDamping,
} from './index.ts';

const stored = <T>(file: string): T =>
  JSON.parse(readFileSync(new URL(`../../../../../evidence/${file}`, import.meta.url), 'utf8')) as T;

interface Coils {
  readonly frequencies: readonly number[];
  readonly open: readonly { natural: number; damping: number; response: readonly (readonly [number, number])[] }[];
}
interface Converter {
  readonly runs: Readonly<Record<string, { readonly rows: readonly (readonly [number, number])[] }>>;
}

const run = (name: string, given: Readonly<Record<string, string>>) =>
  calculate(chainWorkings.find((each) => each.name === name)!, given);
const shown = (name: string, given: Readonly<Record<string, string>>) =>
  Object.fromEntries(run(name, given).results.map((each) => [each.name, each.shown]));
const rulesOf = (name: string, given: Readonly<Record<string, string>>) =>
  run(name, given).findings.map((each) => each.rule);

test('independent: the open moving coil agrees with scipy.signal to 1e-9, phase included', () => {
  const { frequencies, open } = stored<Coils>('scipy/moving-coil.json');
  for (const { natural, damping, response } of open) {
    for (const [index, frequency] of frequencies.entries()) {
      const [re, im] = response[index]!;
      const ours = coilResponse(frequency, natural, damping);
      expect(Math.hypot(ours.re - re, ours.im - im) / Math.hypot(re, im)).toBeLessThan(1e-9);
    }
  }
});

test('independent: noise at the output of a charge converter agrees with ngspice to 1e-5', () => {
  const { runs } = stored<Converter>('charge-converter/charge-converter.json');
  const kelvin = 300.15;
  const ofHundredKilohms = Math.sqrt(4 * 1.380649e-23 * kelvin * 1e5);
  const feedback = { capacitance: 250e-12, resistance: 1e9 };
  const silent = { capacitance: 250e-12, resistance: undefined };
  const hot = { capacitance: 4e-9, resistance: 1e7 };
  const cold = { capacitance: 1e-9 + 1e-15, resistance: 1e12 };
  for (const [frequency, density] of runs['noise-cold']!.rows) {
    expect((ofHundredKilohms * converterNoiseGain(feedback, cold, frequency)) / density).toBeCloseTo(1, 5);
  }
  for (const [frequency, density] of runs['noise-hot']!.rows) {
    expect((ofHundredKilohms * converterNoiseGain(feedback, hot, frequency)) / density).toBeCloseTo(1, 5);
  }
  for (const [frequency, density] of runs['noise-resistors']!.rows) {
    expect(converterNoise(0, feedback, hot, frequency, kelvin) / density).toBeCloseTo(1, 5);
    // Negative: a feedback without resistance makes no thermal noise, and the simulator sees that it does.
    const without = converterNoise(0, silent, { ...hot, resistance: undefined }, frequency, kelvin);
    expect(without).toBe(0);
  }
});

test('law: the noise gain runs from 1 + R_f/R_s at rest to 1 + C_s/C_f, and never falls with more cable or less insulation', () => {
  const farad = fc.double({ min: 1e-11, max: 1e-7, noNaN: true });
  const ohm = fc.double({ min: 1e5, max: 1e11, noNaN: true });
  fc.assert(
    fc.property(farad, ohm, farad, ohm, fc.double({ min: -4, max: 5, noNaN: true }), (Cf, Rf, Cs, Rs, decade) => {
      const feedback = { capacitance: Cf, resistance: Rf };
      const source = { capacitance: Cs, resistance: Rs };
      const frequency = 10 ** decade;
      const low = converterGainAtRest(Rf, Rs);
      const high = 1 + Cs / Cf;
      const gain = converterNoiseGain(feedback, source, frequency);
      expect(gain).toBeLessThanOrEqual(Math.max(low, high) * (1 + 1e-9));
      expect(gain).toBeGreaterThanOrEqual(Math.min(low, high) * (1 - 1e-9));
      const corner = converterCorner(Rf, Cf);
      const far = 1e9 * (corner + 1 / (2 * Math.PI * Rs * Cs));
      expect(converterNoiseGain(feedback, source, far) / high).toBeCloseTo(1, 6);
      const cabled = { ...source, capacitance: Cs * 2 };
      expect(converterNoiseGain(feedback, cabled, far)).toBeGreaterThanOrEqual(high * (1 - 1e-9));
      expect(converterGainAtRest(Rf, Rs / 2)).toBeGreaterThan(low);
    }),
  );
});

test('law: H(f₀) = 1/(2ζ) with a lead of 90°, whatever the damping; towards rest it falls as the square', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.1, max: 100, noNaN: true }),
      fc.double({ min: 0.05, max: 3, noNaN: true }),
      (f0, ζ) => {
        const at = coilResponse(f0, f0, ζ);
        expect(at.re * 2 * ζ).toBeCloseTo(0, 9);
        expect(at.im * 2 * ζ).toBeCloseTo(1, 9);
        const slow = coilResponse(f0 / 1e4, f0, ζ);
        expect(Math.hypot(slow.re, slow.im) * 1e8).toBeCloseTo(1, 3);
      },
    ),
  );
});

test('law: a smaller shunt damps more, an open coil is not damped by itself', () => {
  const coil = { sensitivity: 28, movingMass: 0.02, natural: 10, coilResistance: 380 };
  expect(shuntDamping({ ...coil, shunt: 500 })).toBeGreaterThan(shuntDamping({ ...coil, shunt: 1000 }));
  expect(shuntDamping({ ...coil, shunt: 1e15 })).toBeCloseTo(0, 9);
  expect(() => shuntDamping({ ...coil, movingMass: 0, shunt: 1000 })).toThrow(Refusal);
});

test('law: gap to voltage and back; wider is further below zero', () => {
  const gaps = fc.double({ min: 1e-5, max: 0.02, noNaN: true });
  fc.assert(
    fc.property(fc.double({ min: 100, max: 10_000, noNaN: true }), gaps, (scale, gap) => {
      expect(gapOfVoltage(scale, gapVoltage(scale, gap))).toBeCloseTo(gap, 12);
      expect(gapVoltage(scale, gap)).toBeLessThan(0);
      expect(gapVoltage(scale, gap * 2)).toBeLessThan(gapVoltage(scale, gap));
    }),
  );
});

const coordinate = fc.integer({ min: -50_000, max: 50_000 }).map((thousandths) => thousandths / 1000);
const orbits = fc.array(fc.record({ x: coordinate, y: coordinate }), { minLength: 3, maxLength: 60 });

test('law: S_B ≤ S_true ≤ S_A for every orbit, and the bounds of A and B are those of circle and line', () => {
  fc.assert(
    fc.property(orbits, (orbit) => {
      const [x, y] = [peakToPeak(orbit.map((point) => point.x)), peakToPeak(orbit.map((point) => point.y))];
      const truth = largestExtent(orbit);
      expect(Math.max(x, y)).toBeLessThanOrEqual(truth * (1 + 1e-12));
      expect(truth).toBeLessThanOrEqual(Math.hypot(x, y) * (1 + 1e-12));
      expect(Math.hypot(x, y)).toBeLessThanOrEqual(truth * Math.SQRT2 * (1 + 1e-12));
      expect(Math.max(x, y)).toBeGreaterThanOrEqual((truth / Math.SQRT2) * (1 - 1e-12));
    }),
  );
});

test('law: the search of the orbit finds what a look at every pair of points finds, and turns with the probes', () => {
  const everyPair = (orbit: readonly OrbitPoint[]) =>
    Math.max(...orbit.flatMap((a) => orbit.map((b) => Math.hypot(a.x - b.x, a.y - b.y))));
  fc.assert(
    fc.property(orbits, fc.double({ min: 0, max: 7, noNaN: true }), (orbit, angle) => {
      const truth = everyPair(orbit);
      expect(largestExtent(orbit)).toBeCloseTo(truth, 9);
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      const turned = orbit.map(({ x, y }) => ({ x: c * x - s * y, y: s * x + c * y }));
      expect(largestExtent(turned)).toBeCloseTo(truth, 9);
    }),
  );
});

test('law: S_true of an ellipse is its major axis, whatever its angle', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.01, max: 1, noNaN: true }),
      fc.double({ min: 0, max: Math.PI, noNaN: true }),
      (minor, angle) => {
        const orbit = Array.from({ length: 720 }, (_, index) => {
          const t = (2 * Math.PI * index) / 720;
          const [u, v] = [Math.cos(t), minor * Math.sin(t)];
          return { x: Math.cos(angle) * u - Math.sin(angle) * v, y: Math.sin(angle) * u + Math.cos(angle) * v };
        });
        expect(largestExtent(orbit)).toBeCloseTo(2, 9);
      },
    ),
    { numRuns: 40 },
  );
});

test('negative: a converter of no capacitance, a noise gain at a frequency without the source', () => {
  const given = { sensitivity: '25 pC/g', 'feedback-capacitance': '250 pF', 'feedback-resistance': '1 Gohm' };
  expect(shown('charge-converter', given)).toEqual({ 'voltage-sensitivity': '100 mV/g', corner: '0.6366 Hz' });
  expect(() => run('charge-converter', { ...given, 'feedback-capacitance': '0 pF' })).toThrow(Refusal);
  expect(() => run('charge-converter', { ...given, frequency: '1 Hz' })).toThrow(/source-capacitance/);
  const hot = { ...given, 'source-capacitance': '1000 pF', 'source-resistance': '10 Mohm' };
  expect(shown('charge-converter', hot)).toMatchObject({ 'noise-gain': '5', 'gain-at-rest': '101' });
  expect(Number(shown('charge-converter', { ...hot, frequency: '1 mHz' })['noise-gain'])).toBeCloseTo(101, 0);
});

test('negative: gap and voltage at once, a positive voltage, a voltage where the curve bends', () => {
  const scale = { 'scale-factor': '7.87 mV/um' };
  expect(() => run('proximity-gap', scale)).toThrow(/neither/);
  expect(() => run('proximity-gap', { ...scale, gap: '1 mm', voltage: '-8 V' })).toThrow(/one of/);
  expect(() => run('proximity-gap', { ...scale, gap: '-1 mm' })).toThrow(Refusal);
  expect(shown('proximity-gap', { ...scale, voltage: '10 V' }).voltage).toBe('−10 V');
  expect(rulesOf('proximity-gap', { ...scale, voltage: '10 V' })).toEqual(['proximity/positive-gap-voltage']);
  expect(rulesOf('proximity-gap', { ...scale, voltage: '-22 V' })).toEqual(['proximity/outside-straight-part']);
  expect(rulesOf('proximity-gap', { ...scale, voltage: '-10 V' })).toEqual([]);
});

test('negative: samples without a unit, rows of unlike length, too few samples', () => {
  expect(() => run('s-max', { x: '0, 1, 2', y: '0, 1, 2' })).toThrow(/no unit/);
  expect(() => run('s-max', { x: '0, 1, 2 um', y: '0, 1 mm/s, 2 um' })).toThrow(Refusal);
  expect(() => run('s-max', { x: '0, 1, 2, 3 um', y: '0, 1, 2 um' })).toThrow(/as many/);
  expect(() => run('s-max', { x: '0, 1 um', y: '0, 1 um' })).toThrow(/3 to/);
  expect(() => run('s-max', { x: '0, one, 2 um', y: '0, 1, 2 um' })).toThrow(Refusal);
  const column = '0 um\n1 mil\n2 um\n';
  expect(shown('s-max', { x: column, y: '0; 0; 0 um' })['method-c']).toBe('25.4 µm pp');
  expect(shown('s-max', { x: 'x (um)\n0\n1\n2\n', y: 'y [mil]\n0\n1\n0\n' })['along-y']).toBe('25.4 µm pp');
  expect(() => run('s-max', { x: 'x (mm/s)\n0\n1\n2\n', y: '0, 1, 2 um' })).toThrow(Refusal);
  expect(() => run('s-max', { x: 'x\n0\n1\n2\n', y: '0, 1, 2 um' })).toThrow(Refusal);
  expect(rulesOf('s-max', { x: '0, 1, 2 um', y: '0, 1, 2 um' })).toEqual(['orbit/few-samples']);
});

test('negative: no gas is turned into another unasked, and a power is no leak rate', () => {
  const helium = { from: '1e-7 mbar l/s', gas: 'helium to air', to: 'mbar l/s' };
  expect(() => run('leak-rate', helium)).toThrow(/flow.*molecular or viscous/s);
  expect(shown('leak-rate', { ...helium, flow: 'molecular' })['gas-factor']).toBe('0.3718');
  expect(rulesOf('leak-rate', { ...helium, flow: 'molecular' })).toEqual(['leak/gas-converted']);
  expect(shown('leak-rate', { ...helium, flow: 'viscous' })['gas-factor']).toBe('1.077');
  expect(rulesOf('leak-rate', { from: '1 mbar l/s', to: 'Pa m3/s' })).toEqual(['leak/gas-not-stated']);
  expect(() => run('leak-rate', { ...helium, gas: 'helum' })).toThrow(/helium/);
  expect(() => run('leak-rate', { ...helium, gas: 'helium to air to argon' })).toThrow(Refusal);
  for (const from of ['1 W', '1 kW', '1 mbar', '1 l/s', '-1 mbar l/s', 'mbar l/s', '1']) {
    expect(() => run('leak-rate', { from, to: 'Pa m3/s' }), from).toThrow(Refusal);
  }
});

test('law: volumes counted at 0 °C differ by the temperature alone, and back again is the same', () => {
  const given = { from: '1 mbar l/s', gas: 'helium', temperature: '20 °C', to: 'std cm3/s' };
  // 0.98692 · 273.15/293.15, by hand.
  expect(shown('leak-rate', given).result).toBe('0.9196 atm·cm³/s (standard, 0 °C)');
  expect(rulesOf('leak-rate', given)).toEqual([]);
  const back = { ...given, from: '0.91959 std cm3/s', to: 'mbar l/s' };
  expect(shown('leak-rate', back).result).toBe('1 mbar·l/s');
  const { temperature: _left, ...without } = given;
  expect(rulesOf('leak-rate', without)).toEqual(['leak/volume-temperature']);
  expect(shown('leak-rate', { ...given, to: 'sccm' }).result).toMatch(/^55.1\d /);
});
