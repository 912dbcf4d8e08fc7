import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { changed, input, known, mount, parts, predicted, supply, transducer } from '../../../../../evidence/bench.ts';
import { standardGravity } from '../../quantity/index.ts';
import { type Complex, magnitude } from '../../signal/complex.ts';
import { measuringChain } from '../chain.ts';
import { coilResponse, shuntDamping } from '../formulas/moving-coil-response.ts';
import { noiseAtEnd, transfer } from '../stage.ts';
import { terminalVoltages } from '../terminal-voltages.ts';

const stored = <T>(file: string): T =>
  JSON.parse(readFileSync(new URL(`../../../../../evidence/${file}`, import.meta.url), 'utf8')) as T;

type Row = readonly [number, number, number];

interface Coils {
  readonly frequencies: readonly number[];
  readonly loaded: readonly {
    natural: number;
    damping: number;
    mass: number;
    sensitivity: number;
    coil: number;
    shunt: number;
    cable: number;
    load: number;
    voltage: readonly (readonly [number, number])[];
  }[];
}

const apart = (ours: Complex, re: number, im: number) => Math.hypot(ours.re - re, ours.im - im) / Math.hypot(re, im);

/** The charge accelerometer without its resonance, its converter's output open: what the netlists hold. */
function converterAlone(change: Readonly<Record<string, string | undefined>>) {
  const set = changed(transducer('CHG-25'), {
    mountedResonance: '1 THz',
    outputResistance: '0 ohm',
    insulationHot: undefined,
    insulationCold: undefined,
    ...change,
  });
  const chain = measuringChain(parts({ transducer: set, mount: mount('stud') }));
  return (frequency: number) => transfer(known(chain.transducer.stages), frequency);
}

test.each([
  ['ac-cold', {}],
  ['ac-long-cable', { cableCapacitance: '20 nF', amplifierGain: '2000' }],
  ['ac-hot', { cableCapacitance: '3 nF', insulationHot: '1 Mohm', amplifierGain: '2000' }],
])('independent: charge accelerometer and converter beside ngspice, %s, to 1e-6', (name, change) => {
  const { runs } = stored<{ runs: Record<string, { rows: readonly Row[] }> }>('charge-converter/charge-converter.json');
  const ours = converterAlone(change);
  for (const [frequency, re, im] of runs[name]!.rows) {
    // The netlist keeps the inversion of its amplifier, the model does not.
    expect(apart(ours(frequency), -re, -im), `${frequency} Hz`).toBeLessThan(1e-6);
  }
});

test('independent: a coil with its shunt, cable and load beside two equations solved by numpy, to 1e-6', () => {
  const { frequencies, loaded } = stored<Coils>('scipy/moving-coil.json');
  for (const { natural, damping, mass, sensitivity, coil, shunt, cable, load, voltage } of loaded) {
    const chain = predicted({
      transducer: changed(transducer('MCV-20'), {
        suspension: `${natural} Hz`,
        openDamping: `${damping}`,
        movingMass: `${mass * 1000} g`,
        sensitivity: `${sensitivity} V/(m/s)`,
        coilResistance: `${coil} ohm`,
        ...(shunt > 0 ? { shunt: `${shunt} ohm` } : {}),
      }),
      // A cable of capacitance alone, all of it at the load.
      cable: changed(parts({}).cable, {
        capacitancePerLength: `${cable * 1e9} nF/m`,
        inductancePerLength: '0 uH/m',
        resistancePerLength: '0 ohm/km',
      }),
      metres: 1,
      input: changed(input('RACK-DC'), { inputResistance: `${load} ohm` }),
    }).chain;
    for (const [index, frequency] of frequencies.entries()) {
      const [re, im] = voltage[index]!;
      expect(apart(transfer(known(chain.stages), frequency), re, im), `${natural} Hz at ${frequency} Hz`).toBeLessThan(
        1e-6,
      );
    }
  }
});

test('law: a shunt adds G²/(2·m·ω₀·(R_c + R_s)) to the damping and divides the sensitivity, and nothing else', () => {
  const ohm = fc.double({ min: 300, max: 30_000, noNaN: true });
  fc.assert(
    fc.property(
      ohm,
      fc.double({ min: 4, max: 15, noNaN: true }),
      fc.double({ min: 0.1, max: 0.6, noNaN: true }),
      fc.double({ min: -1, max: 3, noNaN: true }),
      (shunt, natural, damping, decade) => {
        const frequency = 10 ** decade;
        const coil = changed(transducer('MCV-20'), {
          suspension: `${natural} Hz`,
          openDamping: `${damping}`,
          movingMass: '20 g',
          coilResistance: '600 ohm',
          shunt: `${shunt} ohm`,
        });
        const model = measuringChain(parts({ transducer: coil })).transducer;
        const more = shuntDamping({ sensitivity: 20, movingMass: 0.02, natural, coilResistance: 600, shunt });
        const expected = coilResponse(frequency, natural, damping + more);
        const ours = transfer(known(model.stages), frequency);
        expect(known(model.sensitivity)).toBeCloseTo((20 * shunt) / (600 + shunt), 9);
        const scale = known(model.sensitivity);
        expect(apart(ours, scale * expected.re, scale * expected.im)).toBeLessThan(1e-9);
      },
    ),
    { numRuns: 60 },
  );
});

test('law: poor insulation and more low-noise cable raise the noise, and leave the sensitivity as it is', () => {
  const noise = (change: Readonly<Record<string, string | undefined>>, frequency: number) => {
    const set = changed(transducer('CHG-25'), { noise: undefined, ...change });
    const stages = known(measuringChain(parts({ transducer: set })).transducer.stages);
    return known(noiseAtEnd(stages))(frequency);
  };
  for (const frequency of [0.1, 1, 10, 100, 1000]) {
    const good = noise({ insulationHot: '10 Gohm' }, frequency);
    expect(noise({ insulationHot: '1 Mohm' }, frequency)).toBeGreaterThan(good);
    expect(noise({ insulationHot: '10 Gohm', cableCapacitance: '2 nF' }, frequency)).toBeGreaterThan(good);
  }
  const [cold, hot] = [converterAlone({}), converterAlone({ insulationHot: '1 Mohm', cableCapacitance: '5 nF' })];
  expect(magnitude(hot(100))).toBeCloseTo(magnitude(cold(100)), 12);
});

test('printed: the charge accelerometer of the reference plants, 100 mV/g, corner 0.637 Hz, stated noise where it is larger', () => {
  const set = predicted({ transducer: transducer('CHG-25') });
  const perG = known(set.chain.transducer.sensitivity) * standardGravity;
  expect(perG).toBeCloseTo(0.1, 12);
  const response = converterAlone({ noise: undefined });
  expect(magnitude(response(0.637)) * standardGravity).toBeCloseTo(0.1 / Math.SQRT2, 4);
  // 5 µg/√Hz at 1 kHz, of its catalogue; the amplifier alone would make 1.25 µg/√Hz.
  const stages = known(set.chain.transducer.stages);
  expect(known(noiseAtEnd(stages.slice(1)))(1000) / perG).toBeCloseTo(5e-6, 8);
  expect(set.chain.transducer.assumptions.join(' ')).toMatch(/stated curve of the set, or that of amplifier/);
});

test('printed: what reference plants 2 and 10 say of the slow and the heavy transducers', () => {
  const error = (name: string, frequency: number, into: string) =>
    magnitude(known(predicted({ transducer: transducer(name), input: input(into) }).response)(frequency)) - 1;
  // Plant 2: −78.3 % at 0.2 Hz and −99.9 % at 0.025 Hz on an input with a corner of 0.1 Hz; PORT-24 has that corner.
  expect(100 * error('LFV-75', 0.2, 'PORT-24')).toBeCloseTo(-78.3, 1);
  expect(100 * error('LFV-75', 0.025, 'PORT-24')).toBeCloseTo(-99.9, 1);
  expect(100 * error('MCV-20', 11, 'PORT-24')).toBeCloseTo(-19.9, 1);
  expect(100 * error('MCV-20', 5.5, 'PORT-24')).toBeCloseTo(-70.4, 1);
  expect(100 * error('DCA-2', 5000, 'PORT-24')).toBeCloseTo(-83.6, 1);
  // Plant 10: −89.8 % at 0.1417 Hz.
  expect(100 * error('LFV-75', 0.1417, 'PORT-24')).toBeCloseTo(-89.8, 1);
  // Plant 2, the trap: a probe on the coupled input, −10.6 % and −75.7 %.
  expect(100 * error('PRX-25', 0.2, 'PORT-24')).toBeCloseTo(-10.6, 1);
  expect(100 * error('PRX-25', 0.025, 'PORT-24')).toBeCloseTo(-75.7, 1);
  expect(100 * error('PRX-25', 0.025, 'RACK-DC')).toBeCloseTo(0, 3);
  expect(error('LVD-25', 1e-6, 'RACK-DC')).toBeCloseTo(0, 9);
});

test('a device with two outputs gives the one that reaches the input: a number to the card, the motion to the collector', () => {
  const duo = transducer('DUO-25');
  const onLoop = measuringChain(parts({ transducer: duo, input: input('AI-16'), inLine: [supply('LOOP-24')] }));
  expect([onLoop.meets, onLoop.transducer.signal, onLoop.transducer.senses]).toEqual([true, 'overall', 'velocity']);
  const raw = measuringChain(parts({ transducer: duo, input: input('PORT-24') }));
  expect([raw.meets, raw.transducer.signal, raw.transducer.senses]).toEqual([true, 'dynamic', 'acceleration']);
  expect(known(raw.stages).at(-1)!.leaves).toBe('code');
  // An input that feeds a constant current and cannot be told not to takes neither.
  expect(measuringChain(parts({ transducer: duo, input: input('ONL-24') })).meets).toBe(false);
});

test('law: each output of a device with two is that of a device with the one alone', () => {
  const duo = transducer('DUO-25');
  const known25 = duo.sheet.values as Readonly<Record<string, unknown>>;
  const alone = changed(transducer('LPV-25'), { lowCorner: '2 Hz', minimumVoltage: '13 V' });
  const card = { input: input('AI-16'), inLine: [supply('LOOP-24')] };
  const [number, sensor] = [duo, alone].map((each) => predicted({ ...card, transducer: each }));
  const accelerometer = changed(transducer('ACC-100'), {
    range: '20 g peak',
    lowCorner: '1 Hz',
    mountedResonance: '20 kHz',
    quality: '12',
    outputResistance: '500 ohm',
    mass: '140 g',
  });
  const noise = { ...accelerometer.sheet, values: { ...accelerometer.sheet.values, noise: known25.rawNoise } };
  for (const mounted of ['stud', 'magnet-flat']) {
    const [raw, iepe] = [duo, { ...accelerometer, sheet: noise } as typeof accelerometer].map((each) =>
      predicted({ transducer: each, mount: mount(mounted), metres: 30 }),
    );
    for (const frequency of [0.5, 2, 50, 1000, 5000, 20_000]) {
      const [a, b] = [known(raw!.response)(frequency), known(iepe!.response)(frequency)];
      expect(apart(a, b.re, b.im), `${mounted} ${frequency} Hz`).toBeLessThan(1e-12);
      expect(known(raw!.noise)(frequency)).toBeCloseTo(known(iepe!.noise)(frequency), 15);
      const [c, d] = [known(number!.response)(frequency), known(sensor!.response)(frequency)];
      expect(apart(c, d.re, d.im)).toBeLessThan(1e-12);
    }
  }
});

test('printed: reference plant 2, a gap in the middle of its range: 6.95 mm and −5.47 V, at the driver and at the rack', () => {
  const { chain } = predicted({ transducer: transducer('PRX-25'), input: input('RACK-DC'), metres: 140 });
  const found = terminalVoltages(chain).map(({ terminal, voltage }) => [terminal, known(voltage)] as const);
  expect(found.map(([terminal]) => terminal)).toEqual(['oscillator-demodulator', 'RACK-DC']);
  for (const [, { low, high }] of found) {
    expect(low).toBe(high);
    expect(low).toBeCloseTo(-5.47, 2);
  }
  const rod = predicted({ transducer: transducer('LVD-25'), input: input('RACK-DC') }).chain;
  expect(terminalVoltages(rod)).toEqual([]);
});

test('a peak that is derived says so', () => {
  const derived = changed(transducer('LPA-10P'), { range: '10 g derived peak' });
  const assumptions = (each: typeof derived) => measuringChain(parts({ transducer: each })).transducer.assumptions;
  expect(assumptions(derived).join(' ')).toMatch(/√2 × rms/);
  expect(assumptions(transducer('LPA-10P')).join(' ')).not.toMatch(/√2 × rms/);
});
