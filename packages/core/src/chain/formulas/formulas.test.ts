import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Refusal } from '../../quantity/index.ts';
import { calculate } from '../../working/index.ts';
import { compared } from '../../working/printed.ts';
import { chainEvidence, ne43Printed } from './evidence.ts';
import {
  cardCounts,
  cardCurrent,
  chainWorkings,
  dischargeCorner,
  type InputCard,
  loopCurrent,
  loopState,
  loopStates,
  loopValue,
  maximumLoopResistance,
  mountedResonance,
  overloadLimit,
  slewLimit,
  swing,
  transmittedCurrent,
  usableFrequency,
  usableLimit,
} from './index.ts';

const run = (name: string, given: Readonly<Record<string, string>>) =>
  calculate(chainWorkings.find((each) => each.name === name)!, given);
const results = (name: string, given: Readonly<Record<string, string>>) =>
  Object.fromEntries(run(name, given).results.map((each) => [each.name, each.shown]));

test('printed: every number of others agrees to its last digit', () => {
  for (const evidence of chainEvidence) {
    for (const each of compared(evidence)) {
      expect(each, `${evidence.working.name} ${JSON.stringify(evidence.given)}`).toMatchObject({ within: true });
    }
  }
});

test('law: every formula has printed evidence, and its example runs and is substituted', () => {
  for (const working of chainWorkings) {
    expect(
      chainEvidence.some((each) => each.working === working),
      working.name,
    ).toBe(true);
    expect(working.sources.length, working.name).toBeGreaterThan(0);
    for (const result of calculate(working, working.example).results) {
      expect(result.substituted, result.name).not.toBe('');
    }
  }
});

test('negative: one number means both sides, a bare number is refused, 3 dB is half power', () => {
  const at = (tolerance: string) => results('mounted-response', { resonance: '1 kHz', tolerance })['usable-frequency'];
  expect(at('10 %')).toBe(at('±10 %'));
  expect(at('3 dB')).toBe(at('±3 dB'));
  expect(at('3 dB')).toBe('541.2 Hz');
  expect(() => at('0.1')).toThrow(Refusal);
  expect(() => at('0 %')).toThrow(Refusal);
});

test('law: undamped, r = √(1 − 1/(1 + e)); a great quality approaches it', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-4, max: 3, noNaN: true }), (e) => {
      const tolerance = { low: -0.5, high: e };
      expect(usableFrequency(1, undefined, tolerance)).toBeCloseTo(Math.sqrt(1 - 1 / (1 + e)), 12);
      expect(usableFrequency(1, 1e5, tolerance)).toBeCloseTo(Math.sqrt(1 - 1 / (1 + e)), 5);
    }),
  );
});

test('law: at the usable frequency the response is at its limit, and inside at every frequency below', () => {
  const response = (r: number, quality: number) => 1 / Math.hypot(1 - r * r, r / quality);
  fc.assert(
    fc.property(
      fc.double({ min: 0.2, max: 50, noNaN: true }),
      fc.double({ min: 0.005, max: 0.4, noNaN: true }),
      fc.double({ min: 0.005, max: 0.4, noNaN: true }),
      fc.double({ min: 0.01, max: 0.99, noNaN: true }),
      (quality, low, high, share) => {
        const limit = usableLimit(1, quality, { low: -low, high });
        expect(response(limit.frequency, quality)).toBeCloseTo(limit.response, 8);
        const inside = response(limit.frequency * share, quality);
        expect(inside).toBeLessThanOrEqual(1 + high + 1e-9);
        expect(inside).toBeGreaterThanOrEqual(1 - low - 1e-9);
      },
    ),
  );
});

test('law: a softer mount or more mass never raises the usable frequency', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e6, max: 1e10, noNaN: true }),
      fc.double({ min: 0.01, max: 1, noNaN: true }),
      fc.double({ min: 1, max: 100, noNaN: true }),
      (stiffness, mass, factor) => {
        const reference = mountedResonance(27_000, stiffness, mass);
        expect(reference).toBeLessThan(mountedResonance(27_000, undefined, mass));
        expect(mountedResonance(27_000, stiffness / factor, mass)).toBeLessThanOrEqual(reference);
        expect(mountedResonance(27_000, stiffness, mass * factor)).toBeLessThanOrEqual(reference);
      },
    ),
  );
});

test('law: adding cable never raises the slew limit', () => {
  const positive = fc.double({ min: 1e-12, max: 1e-6, noNaN: true });
  fc.assert(
    fc.property(positive, positive, fc.double({ min: 0, max: 0.02, noNaN: true }), (cable, added, supply) => {
      expect(slewLimit(cable + added, supply, 0.001, 5)).toBeLessThanOrEqual(slewLimit(cable, supply, 0.001, 5));
    }),
  );
});

test('law: adding barrier resistance never raises the overload limit, nor does the sensitivity', () => {
  const volts = fc.double({ min: 0, max: 30, noNaN: true });
  fc.assert(
    fc.property(volts, volts, volts, volts, fc.double({ min: 1e-4, max: 1, noNaN: true }), (V, low, drop, more, S) => {
      const limits = { compliance: V, sourceDrop: 1, bias: { low, high: low + 4 }, saturation: 2 };
      const without = overloadLimit(785, swing({ ...limits, seriesDrop: drop }), S);
      expect(overloadLimit(785, swing({ ...limits, seriesDrop: drop + more }), S)).toBeLessThanOrEqual(without);
      expect(overloadLimit(785, swing({ ...limits, seriesDrop: drop }), 2 * S)).toBeLessThanOrEqual(without);
      expect(without).toBeGreaterThanOrEqual(0);
    }),
  );
});

test('negative: headroom refuses a range in rms and a resistance without its current, and blocks where no swing is left', () => {
  const given = {
    compliance: '24 V',
    'source-drop': '1 V',
    bias: '10..14 V',
    saturation: '2 V',
    sensitivity: '100 mV/g',
    range: '80 g peak',
  };
  expect(() => run('iepe-headroom', { ...given, range: '80 g rms' })).toThrow(/peak/);
  expect(() => run('iepe-headroom', { ...given, 'series-resistance': '340 ohm' })).toThrow(/supply-current/);
  const dead = run('iepe-headroom', { ...given, compliance: '12 V' });
  expect(dead.results.find((each) => each.name === 'overload')?.json).toMatchObject({ value: 0, detector: 'peak' });
  expect(dead.findings.map((each) => each.weight)).toEqual(['blocks-issue']);
});

test('negative: the cable is given once, as a whole or by its length, and the supply must feed the sensor', () => {
  const given = { 'supply-current': '4 mA', 'sensor-current': '1 mA', 'peak-voltage': '5 V peak' };
  const byLength = { 'capacitance-per-length': '100 pF/m', length: '85 m' };
  expect(results('iepe-cable-drive', { ...given, ...byLength })['total-capacitance']).toBe('8.5 nF');
  for (const cable of [
    {},
    { length: '85 m' },
    { capacitance: '3 nF', ...byLength },
    { capacitance: '3 nF', length: '85 m' },
  ]) {
    expect(() => run('iepe-cable-drive', { ...given, ...cable }), JSON.stringify(cable)).toThrow(/capacitance/);
  }
  expect(() => run('iepe-cable-drive', { ...given, ...byLength, 'supply-current': '1 mA' })).toThrow(
    /keeps for itself/,
  );
  expect(() => run('iepe-cable-drive', { ...given, ...byLength, 'peak-voltage': '5 V rms' })).toThrow(/peak/);
  expect(() => run('iepe-cable-drive', { ...given, capacitance: '100 pF/m' })).toThrow(Refusal);
});

test('law: a longer time constant never raises the corner; half power gives 1/(2πτ)', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-3, max: 100, noNaN: true }),
      fc.double({ min: 0.001, max: 0.9, noNaN: true }),
      (tau, e) => {
        const tolerance = { low: -e, high: e };
        expect(dischargeCorner(2 * tau, tolerance)).toBeLessThan(dischargeCorner(tau, tolerance));
        expect(dischargeCorner(tau, { low: Math.SQRT1_2 - 1, high: 1 }) * 2 * Math.PI * tau).toBeCloseTo(1, 12);
      },
    ),
  );
});

test('law: NE 43 covers 0 to 25 mA without gaps, each state once and in order', () => {
  const seen: string[] = [];
  for (let microamperes = 0; microamperes <= 25_000; microamperes++) {
    const state = loopState(microamperes * 1e-6);
    if (state !== seen.at(-1)) seen.push(state);
  }
  expect(seen).toEqual([...loopStates]);
  fc.assert(
    fc.property(fc.double({ min: 0, max: 0.025, noNaN: true }), (current) => {
      expect(loopStates).toContain(loopState(current));
    }),
  );
});

test('printed: the NE 43 limits belong to the side the recommendation names (second-hand)', () => {
  const { faultLow, measuringLow, measuringHigh, faultHigh } = ne43Printed.milliamperes;
  const state = (milliamperes: number) => loopState(milliamperes / 1000);
  expect([state(faultLow), state(faultLow + 0.001)]).toEqual(['fault-low', 'not-usable-low']);
  expect([state(measuringLow - 0.001), state(measuringLow)]).toEqual(['not-usable-low', 'under-range']);
  expect([state(measuringHigh), state(measuringHigh + 0.001)]).toEqual(['over-range', 'not-usable-high']);
  expect([state(faultHigh - 0.001), state(faultHigh)]).toEqual(['not-usable-high', 'fault-high']);
});

test('law: value to current and back, and a transmitter never leaves 3.8 to 20.5 mA', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 100, noNaN: true }),
      fc.double({ min: 0, max: 10, noNaN: true }),
      fc.double({ min: 0.01, max: 100, noNaN: true }),
      (value, low, span) => {
        const high = low + span;
        expect(loopValue(loopCurrent(value, low, high), low, high)).toBeCloseTo(value, 8);
        const sent = transmittedCurrent(value, low, high);
        expect(sent).toBeGreaterThanOrEqual(0.0038);
        expect(sent).toBeLessThanOrEqual(0.0205);
      },
    ),
  );
});

test('negative: a fault is no value, a value beyond the range is held, detectors must agree', () => {
  const scale = { 'range-low': '0 mm/s rms', 'range-high': '25 mm/s rms' };
  expect(results('loop-scaling', { ...scale, current: '3.5 mA' })).toEqual({ state: 'fault-low' });
  expect(results('loop-scaling', { ...scale, current: '20.7 mA' })).toEqual({ state: 'not-usable-high' });
  expect(run('loop-scaling', { ...scale, current: '4 mA' }).findings.map((each) => each.rule)).toEqual([
    'loop/zero-or-dead',
  ]);
  const beyond = run('loop-scaling', { ...scale, value: '40 mm/s rms' });
  expect(beyond.results.map((each) => each.shown)).toEqual(['20.5 mA', '25.78 mm/s rms', 'over-range']);
  expect(beyond.findings.map((each) => each.rule)).toEqual(['loop/held-at-its-end']);
  expect(() => run('loop-scaling', { ...scale, value: '3 mm/s peak' })).toThrow(/detector/);
  expect(() => run('loop-scaling', { ...scale, 'range-high': '25 mm/s peak', value: '3 mm/s rms' })).toThrow(
    /detector/,
  );
  expect(() => run('loop-scaling', scale)).toThrow(/neither/);
  expect(() => run('loop-scaling', { ...scale, value: '3 mm/s rms', current: '6 mA' })).toThrow(/one of/);
  expect(() =>
    run('loop-scaling', { 'range-low': '25 mm/s rms', 'range-high': '0 mm/s rms', value: '3 mm/s rms' }),
  ).toThrow(Refusal);
});

test('negative: a loop without a stated fault current says which one it took', () => {
  const assumed = run('loop-load', { supply: '21.6 V', 'device-minimum': '12 V' });
  expect(assumed.results.map((each) => each.name)).toEqual(['assumed-current', 'fixed-drops', 'maximum-resistance']);
  expect(assumed.findings.map((each) => each.rule)).toEqual(['loop/assumed-fault-current']);
  const stated = run('loop-load', { supply: '21.6 V', 'device-minimum': '12 V', 'fault-current': '22 mA' });
  expect(stated.results.map((each) => each.name)).toEqual(['fixed-drops', 'maximum-resistance']);
  expect(stated.findings).toEqual([]);
  expect(
    run('loop-load', { supply: '11 V', 'device-minimum': '12 V', 'fault-current': '21 mA' }).findings[0]?.weight,
  ).toBe('blocks-issue');
});

test('law: adding an element to the loop never raises the resistance left', () => {
  const volts = fc.double({ min: 0, max: 30, noNaN: true });
  fc.assert(
    fc.property(volts, volts, volts, volts, (supply, device, drop, more) => {
      expect(maximumLoopResistance(supply, device, drop + more, 0.021)).toBeLessThanOrEqual(
        maximumLoopResistance(supply, device, drop, 0.021),
      );
    }),
  );
});

test('law: counts to current and back are the same counts; current to counts and back within half a count', () => {
  const cards: readonly InputCard[] = [
    { currentAtLow: 0.004, currentAtHigh: 0.02, countsAtLow: 0, countsAtHigh: 32_000 },
    { currentAtLow: 0, currentAtHigh: 0.02, countsAtLow: 0, countsAtHigh: 4095 },
  ];
  fc.assert(
    fc.property(
      fc.constantFrom(...cards),
      fc.integer({ min: 0, max: 40_000 }),
      fc.double({ min: 0, max: 0.025, noNaN: true }),
      (card, counts, current) => {
        expect(cardCounts(cardCurrent(counts, card), card)).toBe(counts);
        const perCount = cardCurrent(1, card) - cardCurrent(0, card);
        expect(Math.abs(cardCurrent(cardCounts(current, card), card) - current)).toBeLessThanOrEqual(
          perCount * 0.500001,
        );
      },
    ),
  );
});

test('negative: a card that does not rise is refused, a current outside it is noted', () => {
  const card = { 'counts-at-low': '0', 'counts-at-high': '4095', 'current-low': '0 mA', 'current-high': '20 mA' };
  expect(() => run('counts-scaling', { ...card, current: '4 mA', 'current-low': '20 mA' })).toThrow(Refusal);
  expect(run('counts-scaling', { ...card, current: '20.5 mA' }).findings.map((each) => each.rule)).toEqual([
    'loop/outside-card',
  ]);
  expect(run('counts-scaling', { ...card, current: '20 mA' }).findings).toEqual([]);
});
