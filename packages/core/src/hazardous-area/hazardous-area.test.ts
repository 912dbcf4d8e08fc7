import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Group, hazardousZones, temperatureClasses } from '../demand/hazardous-area.ts';
import { showMeasure } from '../finding/measure.ts';
import { Refusal } from '../quantity/index.ts';
import { calculate, compared } from '../working/index.ts';
import { areaEvidence } from './evidence.ts';
import {
  areaWorkings,
  atMost,
  cableOfRuns,
  capAfterHalving,
  caution,
  columnFor,
  columnSuspected,
  coversClass,
  coversGroup,
  coversLevel,
  type EntityApparatus,
  type EntitySource,
  entityComparison,
  entityComparisonWorking,
  highestSurfaceOf,
  lowestRank,
  mayBeSimpleApparatus,
  parseMarkings,
  powerForT4,
  requiredLevel,
  usualPermittedCapacitance,
  wholeMetresDown,
} from './index.ts';

// Longer than most files: what comparing entity parameters are held against stands together, and the list of evidence names this one file.

test('printed: every worked case of the room, and every working has one', () => {
  for (const evidence of areaEvidence) {
    for (const each of compared(evidence)) expect(each, JSON.stringify(evidence.given)).toMatchObject({ within: true });
  }
  for (const working of areaWorkings) expect(areaEvidence.some((each) => each.working === working)).toBe(true);
});

const celsius = (kelvin: number) => kelvin - 273.15;

test('printed: highest surface of every temperature class (trade table and manual, second-hand; T4A from memory)', () => {
  const printed = [450, 300, 280, 260, 230, 215, 200, 180, 165, 160, 135, 120, 100, 85];
  expect(temperatureClasses.map((each) => Math.round(celsius(highestSurfaceOf(each))))).toEqual(printed);
});

test('printed: T4 by power, 1.3 W at 40 °C, 1.2 W at 60 °C, 1.0 W at 80 °C (IEC 60079-11, from memory)', () => {
  expect([40, 60, 80].map((each) => powerForT4(each + 273.15))).toEqual([1.3, 1.2, 1.0]);
  expect(powerForT4(20 + 273.15)).toBe(1.3);
  expect(powerForT4(81 + 273.15)).toBeUndefined();
});

test('printed: the level each zone asks for (IEC 60079-0, from memory); a division is taken by its stricter zone', () => {
  expect(hazardousZones.map(requiredLevel)).toEqual(['Ga', 'Gb', 'Gc', 'Da', 'Db', 'Dc', 'Ga', 'Gc']);
});

test('printed: permitted capacitance at the remembered points (IEC 60079-11, Table A.2, from memory)', () => {
  const microfarads = (volts: number, column: 'IIA' | 'IIB' | 'IIC') =>
    Number((usualPermittedCapacitance(volts, column)! * 1e6).toPrecision(6));
  expect([10, 12, 15, 20, 24, 30].map((volts) => microfarads(volts, 'IIC'))).toEqual([
    3, 1.41, 0.58, 0.22, 0.125, 0.066,
  ]);
  expect([10, 30].map((volts) => microfarads(volts, 'IIB'))).toEqual([20, 0.56]);
  expect([10, 30].map((volts) => microfarads(volts, 'IIA'))).toEqual([100, 1.82]);
  expect(usualPermittedCapacitance(31, 'IIC')).toBeUndefined();
  expect(usualPermittedCapacitance(9, 'IIC')).toBeUndefined();
});

test('printed: Ex ia IIC T4 Ga satisfies IIB T3 zone 1 (equipment groups, from memory)', () => {
  const [marking] = parseMarkings('Ex ia IIC T4 Ga');
  expect(marking).toMatchObject({ associated: false, group: 'IIC', temperatureClass: 'T4', level: 'Ga' });
  expect(coversGroup(marking!.group!, 'IIB')).toBe(true);
  expect(coversClass(marking!.temperatureClass!, 'T3')).toBe(true);
  expect(coversLevel(marking!.level, requiredLevel('1'))).toBe(true);
});

test.each([
  ['[Ex ia Ga] IIC', { associated: true, group: 'IIC', level: 'Ga' }],
  ['[Ex ib] IIB', { associated: true, group: 'IIB', level: 'Gb' }],
  ['Ex ec [ia Ga] IIC T4 Gc', { associated: true, group: 'IIC', level: 'Ga' }],
  ['II 1 G Ex ia IIC T4 Ga', { associated: false, group: 'IIC', level: 'Ga' }],
  ['II (1) GD [Ex ia Ga] IIC', { associated: true, group: 'IIC', level: 'Ga' }],
  ['Ex db IIB+H2 T3 Gb', { group: 'IIB', andHydrogen: true, temperatureClass: 'T3', level: 'Gb' }],
  ['Ex ia IIIC T135 °C Da', { group: 'IIIC', highestSurface: 408.15, level: 'Da' }],
  ['Ex ic IIC T5', { temperatureClass: 'T5', level: 'Gc' }],
  ['Ex ia IIC T4 Ga IP67 -40 °C ≤ Ta ≤ +100 °C', { group: 'IIC', level: 'Ga' }],
  ['Ex db eb IIC T4 Gb', { level: 'Gb' }],
])('a marking is read: %s', (text, wanted) => {
  expect(parseMarkings(text)[0]).toMatchObject(wanted);
});

test('several markings of one part are read each for itself', () => {
  const [gas, dust] = parseMarkings('Ex ia IIC T4 Ga / Ex ia IIIC T135°C Da');
  expect([gas!.level, dust!.level]).toEqual(['Ga', 'Da']);
});

test.each([
  '',
  'certified',
  'Ex IIC T4 Ga',
  'Ex ib IIC T4 Ga',
  'Ex ia IIC T7 Ga',
  'Ex ia IIC T4 Da',
  'Ex xa IIC T4 Ga',
])('negative: a marking that is not understood, or says too much, is refused: %j', (text) => {
  expect(() => parseMarkings(text)).toThrow(Refusal);
});

test('law: a group covers what it covers, in one order, and gas never covers dust', () => {
  const gas: readonly Group[] = ['IIA', 'IIB', 'IIC'];
  const dust: readonly Group[] = ['IIIA', 'IIIB', 'IIIC'];
  for (const list of [gas, dust]) {
    for (const [i, offered] of list.entries()) {
      for (const [j, asked] of list.entries()) expect(coversGroup(offered, asked)).toBe(i >= j);
    }
  }
  for (const one of gas)
    for (const other of dust) expect(coversGroup(one, other) || coversGroup(other, one)).toBe(false);
  expect([...gas, ...dust].map(columnFor)).toEqual(['IIA', 'IIB', 'IIC', 'IIB', 'IIB', 'IIB']);
});

test('a loop is worth its weakest part; simple apparatus has nothing to give (1.5 V, 100 mA, 25 mW, from memory)', () => {
  expect(lowestRank(['a', 'b', 'a'])).toBe('b');
  expect(lowestRank(['a', 'c', 'b'])).toBe('c');
  expect(lowestRank([])).toBeUndefined();
  expect(mayBeSimpleApparatus({ voltage: 1.5, current: 0.1, power: 0.025 })).toBe(true);
  expect(mayBeSimpleApparatus({ voltage: 1.6, current: 0, power: 0 })).toBe(false);
});

// Decades of the values that certificates have, so that both halved and whole comparisons are met.
const decades = (low: number, high: number) =>
  fc.double({ min: low, max: high, noNaN: true }).map((power) => 10 ** power);
const source = fc.record({
  voltage: fc.constantFrom(12, 24, 28),
  current: fc.constantFrom(0.05, 0.093),
  power: fc.constantFrom(0.2, 0.65),
  capacitance: decades(-8, -5.5),
  inductance: decades(-4, -1.5),
  inductanceOverResistance: fc.option(decades(-5, -3.5), { nil: undefined }),
});
const apparatus = fc.record({
  voltage: fc.constant(30),
  current: fc.constant(0.15),
  power: fc.constant(0.85),
  capacitance: decades(-10, -6.5),
  inductance: decades(-7, -3),
});
const run = fc.record({
  capacitancePerLength: decades(-10.5, -9.3),
  inductancePerLength: decades(-6.7, -5.7),
  inductanceOverResistance: fc.option(decades(-5.5, -4), { nil: undefined }),
});
const group = fc.constantFrom<Group>('IIA', 'IIB', 'IIC', 'IIIC');
const metres = fc.double({ min: 0, max: 5000, noNaN: true });

type Run = { capacitancePerLength: number; inductancePerLength: number; inductanceOverResistance: number | undefined };
const passes = (g: Group, from: EntitySource, hangs: EntityApparatus, cable: Run, length: number) =>
  entityComparison(g, from, hangs, cableOfRuns([{ ...cable, length }], 'declared'));

test('law: what passes with a cable passes with a shorter one', () => {
  fc.assert(
    fc.property(group, source, apparatus, run, metres, metres, (g, from, hangs, cable, one, other) => {
      const [short, long] = [Math.min(one, other), Math.max(one, other)];
      if (passes(g, from, hangs, cable, long).passed) expect(passes(g, from, hangs, cable, short).passed).toBe(true);
    }),
  );
});

test('law: the longest cable is the one that still passes: a little more does not, a little less does', () => {
  fc.assert(
    fc.property(group, source, apparatus, run, (g, from, hangs, cable) => {
      const { maximumLength, clauses } = passes(g, from, hangs, cable, 0);
      const at = (length: number) => passes(g, from, hangs, cable, length).passed;
      if (clauses.some((each) => !each.passed)) expect(maximumLength).toBe(0);
      else {
        expect(at(maximumLength * (1 - 1e-6))).toBe(true);
        if (maximumLength < 1e6) expect(at(maximumLength * (1 + 1e-6) + 1e-3)).toBe(false);
        expect(at(wholeMetresDown(maximumLength))).toBe(true);
      }
    }),
  );
});

test('law: what fails in IIB fails in IIC, on a certificate whose columns narrow', () => {
  const narrower = fc.double({ min: 0.05, max: 1, noNaN: true });
  fc.assert(
    fc.property(source, apparatus, run, metres, narrower, narrower, narrower, (wide, hangs, cable, length, c, l, r) => {
      const narrow = {
        ...wide,
        capacitance: wide.capacitance * c,
        inductance: wide.inductance * l,
        inductanceOverResistance:
          wide.inductanceOverResistance === undefined ? undefined : wide.inductanceOverResistance * r,
      };
      const [inB, inC] = [passes('IIB', wide, hangs, cable, length), passes('IIC', narrow, hangs, cable, length)];
      if (!inB.passed) expect(inC.passed).toBe(false);
      expect(inC.allowedCapacitance).toBeLessThanOrEqual(inB.allowedCapacitance);
    }),
  );
});

test('law: lengths one behind the other store what they store together, and their longest agrees with the verdict', () => {
  fc.assert(
    fc.property(group, source, apparatus, run, run, metres, metres, (g, from, hangs, one, other, here, there) => {
      const cable = cableOfRuns(
        [
          { ...one, length: here },
          { ...other, length: there },
        ],
        'declared',
      );
      const entity = entityComparison(g, from, hangs, cable);
      const C = one.capacitancePerLength * here + other.capacitancePerLength * there;
      expect(entity.totalCapacitance).toBeCloseTo(hangs.capacitance + C, 15);
      if (entity.passed) expect(entity.maximumLength).toBeGreaterThanOrEqual(cable.length * (1 - 1e-9));
    }),
  );
});

const given = {
  uo: '28 V',
  io: '93 mA',
  po: '0.651 W',
  co: '83 nF',
  lo: '4.2 mH',
  ui: '28 V',
  ii: '93 mA',
  pi: '0.651 W',
  ci: '12 nF',
  li: '60 uH',
  group: 'IIC',
  'cable-length': '147.5 m',
} as const;
const found = (change: Readonly<Record<string, string>> = {}) => {
  const { results, findings } = calculate(entityComparisonWorking, { ...given, ...change });
  return { ...Object.fromEntries(results.map((each) => [each.name, each.json])), findings, results };
};
type Found = ReturnType<typeof found> & Readonly<Record<string, unknown>>;

test('equality passes in every clause; a hair above in any of them does not', () => {
  expect(found()).toMatchObject({ passed: true, halved: true, 'limited-by': 'capacitance' });
  for (const change of [
    { uo: '28.01 V' },
    { io: '93.01 mA' },
    { po: '0.6511 W' },
    { ci: '12.01 nF' },
    { 'cable-length': '147.51 m' },
    { lo: '0.4 mH' },
  ]) {
    expect(found(change), JSON.stringify(change)).toMatchObject({ passed: false });
  }
  expect(found({ uo: '28.01 V' })).toMatchObject({ 'limited-by': 'voltage', 'maximum-length': { value: 0 } });
});

test('negative: only one lumped value above 1 % halves nothing; exactly 1 % is not above it', () => {
  expect(found({ li: '42 uH' })).toMatchObject({ halved: false });
  expect(found({ li: '42.1 uH' })).toMatchObject({ halved: true });
  expect(found({ ci: '0.83 nF' })).toMatchObject({ halved: false });
  expect(found({ ci: '0.84 nF' })).toMatchObject({ halved: true });
});

test('negative: after halving, Co counts for no more than 600 nF in IIC and 1 µF elsewhere (from memory)', () => {
  const large = { co: '3 uF', lo: '4 mH', ci: '40 nF', li: '60 uH' };
  const allowed = (each: string) => (found({ ...large, group: each }) as Found)['allowed-capacitance'];
  expect(allowed('IIC')).toMatchObject({ value: 600e-9 });
  expect(allowed('IIB')).toMatchObject({ value: 1e-6 });
  expect(allowed('IIIC')).toMatchObject({ value: 1e-6 });
  expect(capAfterHalving('IIA')).toBe(1e-6);
  expect(found({ ...large, li: '1 uH' })).toMatchObject({ halved: false, 'allowed-capacitance': { value: 3e-6 } });
});

test('L/R carries a long cable past Lo while Li is at most 1 % of Lo, and never beyond', () => {
  const thick = { co: '5 uF', lo: '0.2 mH', li: '1 uH', 'cable-length': '1000 m' };
  expect(found(thick)).toMatchObject({ passed: false, 'limited-by': 'inductance' });
  expect(found({ ...thick, 'lo-over-ro': '30 uH/ohm' })).toMatchObject({ passed: true, 'limited-by': 'capacitance' });
  expect(found({ ...thick, 'lo-over-ro': '29.9 uH/ohm' })).toMatchObject({ passed: false });
  expect(found({ ...thick, li: '3 uH', 'lo-over-ro': '30 uH/ohm' })).toMatchObject({ passed: false });
  const declared = { 'cable-inductance': '0.65 uH/m', 'cable-resistance': '74 ohm/km' };
  expect(found({ ...thick, ...declared, 'lo-over-ro': '9 uH/ohm' })).toMatchObject({ passed: true });
  expect(found({ ...thick, ...declared, 'lo-over-ro': '8 uH/ohm' })).toMatchObject({ passed: false });
});

test('a length is shown in whole metres, down; scripts get it whole', () => {
  const length = found().results.find((each) => each.name === 'maximum-length')!;
  expect(length.shown).toBe('147 m');
  expect(length.json).toMatchObject({ value: expect.closeTo(147.5, 9), shown: '147 m' });
  expect(wholeMetresDown((0.125e-6 - 5e-9) / 200e-12)).toBe(600);
  expect(wholeMetresDown(183.999)).toBe(183);
});

test.each([
  ['an L/R ratio typed as an inductance', { lo: '55 uH/ohm' }],
  ['an inductance typed as a ratio', { 'lo-over-ro': '4.2 mH' }],
  ['a capacitance of the whole cable typed per length', { 'cable-capacitance': '25.6 nF' }],
  ['a voltage below zero', { ui: '-30 V' }],
  ['a group that is none', { group: 'IID' }],
])('bad input: %s is refused', (_name, change) => {
  expect(() => found(change as Readonly<Record<string, string>>)).toThrow(Refusal);
});

test('bad input: Co from the column of IIB is questioned in IIC, with the value that is usual there', () => {
  const { findings } = found({ co: '650 nF' });
  expect(showMeasure(findings.find((each) => each.rule === 'area/column')?.asks ?? '')).toMatch(/IIC or IIB/);
  expect(columnSuspected(28, 83e-9, 'IIC')).toBeUndefined();
  expect(columnSuspected(28, 650e-9, 'IIB')).toBeUndefined();
  expect(columnSuspected(28, 2150e-9, 'IIB')).toBe('IIA');
});

test('the working words its result as a comparison, with its caution, and marks the default cable', () => {
  const { results, findings } = found();
  expect(results.find((each) => each.name === 'passed')?.shown).toBe('comparison passed for these certificate values');
  expect(entityComparisonWorking.holds).toContain(caution);
  expect(findings.map((each) => each.rule)).toContain('area/default-cable');
  const failing = found({ 'cable-length': '160 m' });
  expect(failing.findings.filter((each) => each.weight === 'blocks-issue').map((each) => each.at)).toEqual([
    'entity-comparison/Ci + Cc ≤ Co',
  ]);
});

test('what is compared is compared as typed: equal decimals are equal', () => {
  expect(atMost(0.1 + 0.2, 0.3)).toBe(true);
  expect(atMost(0.3000001, 0.3)).toBe(false);
});
