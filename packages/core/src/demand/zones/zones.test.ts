import fc from 'fast-check';
import { expect, test } from 'vitest';
import { wording } from '../../finding/index.ts';
import { showMeasure } from '../../finding/measure.ts';
import { level, Refusal, si, stated } from '../../quantity/index.ts';
import { sources } from '../../source/index.ts';
import { calculate } from '../../working/index.ts';
import { compared } from '../../working/printed.ts';
import { zonesEvidence } from './evidence.ts';
import {
  acquaintance,
  boundariesAt,
  clearanceFindings,
  type MachineFacts,
  ownersTable,
  runoutAllowance,
  scopeFindings,
  shaftAcceptance,
  shaftLimits,
  type ZoneTable,
  zoneOf,
  zones,
  zoneTable,
  zoneTables,
  zoneWorkings,
} from './index.ts';

// Longer than most files: what the zone tables are held against stands together, and the list of evidence names this one file.

const table = (name: string): ZoneTable => {
  const found = zoneTables.find((each) => each.name === name);
  if (found === undefined) throw new Error(`no table ${name}`);
  return found;
};
const inBand = (value: number, detector: 'rms' | 'peak' = 'rms') =>
  level('velocity', value / 1000, detector, { low: 10, high: 1000 });
const speed = (perMinute: number) => perMinute / 60;
const span = (low: number, high = low) => ({
  low: si('shaft speed', speed(low)),
  high: si('shaft speed', speed(high)),
});

const pump: MachineFacts = {
  power: stated(si('power', 160e3)),
  speed: stated(span(750, 1486)),
  support: stated('rigid'),
};

test('printed: shaft boundaries over speed and with the clearance (check values and reference plant 3, computed by others)', () => {
  for (const evidence of zonesEvidence) {
    for (const each of compared(evidence)) expect(each, JSON.stringify(evidence.given)).toMatchObject({ within: true });
  }
  for (const working of zoneWorkings) {
    expect(zonesEvidence.some((each) => each.working === working)).toBe(true);
    expect(calculate(working, working.example).results).toHaveLength(Object.keys(working.outputs).length);
  }
});

test('printed: the table of the curve is the formula (ISO 7919-3 and ISO 20816-3 Annex B, from memory)', () => {
  for (const name of ['iso-7919-3-shaft', 'iso-20816-3-2022-shaft']) {
    const at3600 = boundariesAt(table(name), 60);
    if (!at3600.known) throw new Error('speed was given');
    const values = [at3600.value.ab, at3600.value.bc, at3600.value.cd].map((each) => each.value * 1e6);
    expect(values.map((each) => each.toFixed(6))).toEqual(['80.000000', '150.000000', '220.000000']);
    const formula = shaftLimits(60);
    expect(at3600.value.cd.value).toBeCloseTo(formula.cd.value, 15);
    expect(boundariesAt(table(name), undefined)).toMatchObject({ known: false, missing: [{ what: 'shaft speed' }] });
  }
});

test('printed: velocity over displacement is 12.4 to 12.6 Hz in group 1 and 9.9 to 10.1 Hz in group 2 (check values), so no cell is mistyped', () => {
  const between = { 1: [12.35, 12.65], 2: [9.85, 10.15] } as const;
  let checked = 0;
  for (const edition of ['iso-20816-3-2022', 'iso-10816-3-2009']) {
    for (const group of [1, 2] as const) {
      for (const support of ['rigid', 'flexible']) {
        const velocity = table(`${edition}-group-${group}-${support}-velocity`).boundaries;
        const displacement = table(`${edition}-group-${group}-${support}-displacement`).boundaries;
        for (const key of ['ab', 'bc', 'cd'] as const) {
          const crossing = velocity[key].value / (2 * Math.PI * displacement[key].value);
          expect(crossing, `${edition} ${group} ${support} ${key}`).toBeGreaterThan(between[group][0]);
          expect(crossing, `${edition} ${group} ${support} ${key}`).toBeLessThan(between[group][1]);
          checked++;
        }
      }
    }
  }
  expect(checked).toBe(24);
});

const inMillimetresPerSecond = ({ boundaries: { ab, bc, cd } }: ZoneTable) =>
  [ab, bc, cd].map(({ value }) => value * 1000);

test('printed: 1.25 times the pump boundaries are the largest alarm and trip of that edition (check values, from memory)', () => {
  const printed = {
    'i-up-to': [5.0, 8.3],
    'i-above': [6.3, 9.5],
    'ii-up-to': [6.4, 10.6],
    'ii-above': [7.6, 11.9],
  } as const;
  for (const [name, [alarm, trip]] of Object.entries(printed)) {
    const [, bc, cd] = inMillimetresPerSecond(table(`iso-10816-7-2009-category-${name}-200-kw`));
    expect(Math.abs(1.25 * bc! - alarm), name).toBeLessThanOrEqual(0.0501);
    expect(Math.abs(1.25 * cd! - trip), name).toBeLessThanOrEqual(0.0501);
  }
});

test('law: the classes of 1995 are three steps out of one series of numbers, so no cell is mistyped (computed here)', () => {
  const series = [0.71, 1.12, 1.8, 2.8, 4.5, 7.1, 11.2, 18];
  for (const [i, numeral] of ['i', 'ii', 'iii', 'iv'].entries()) {
    const values = inMillimetresPerSecond(table(`iso-10816-1-1995-class-${numeral}`));
    expect(values.map((each) => each.toFixed(3))).toEqual([i, i + 2, i + 4].map((at) => series[at]!.toFixed(3)));
  }
});

test('law: the compressor boundaries rise by a half from zone to zone, within their rounding (computed here)', () => {
  const compressor = zoneTables.filter(({ name }) => name.startsWith('iso-20816-8-2018'));
  expect(compressor).toHaveLength(6);
  for (const each of compressor) {
    const [ab, bc, cd] = inMillimetresPerSecond(each);
    expect(cd! / bc!, each.name).toBeCloseTo(1.5, 10);
    expect(Math.abs(bc! / 1.5 - ab!), each.name).toBeLessThanOrEqual(0.051);
  }
});

test('negative: 2.8/5.3/8.5 mm/s, put about as ISO 10816-3, stands in no shipped table', () => {
  for (const { name, boundaries } of zoneTables) {
    const values = [boundaries.ab, boundaries.bc, boundaries.cd].map((each) => Math.round(each.value * 1e4) / 10);
    expect(values, name).not.toEqual([2.8, 5.3, 8.5]);
  }
});

test('law: every shipped table cites a listed source, says that it is unverified, and rises from A/B to C/D', () => {
  expect(zoneTables.length).toBe(34);
  for (const each of zoneTables) {
    expect(sources, each.name).toContain(each.cited.source);
    expect(['from memory', 'second-hand'], each.name).toContain(acquaintance(each));
    const unverified = scopeFindings(pump, each, 'P-301').filter(({ rule }) => rule === 'zones/unverified-table');
    expect(
      unverified.map(({ weight }) => weight),
      each.name,
    ).toEqual(['warns']);
    expect(showMeasure(unverified[0]?.remedy[0] ?? ''), each.name).toMatch(/licensed copy/);
  }
});

test('law: a higher level is never in a lower zone, and each boundary still belongs to the zone below', () => {
  const positive = fc.double({ min: 1e-6, max: 1, noNaN: true });
  fc.assert(
    fc.property(
      fc.constantFrom(...zoneTables),
      positive,
      positive,
      fc.double({ min: 5, max: 500, noNaN: true }),
      (each, a, b, n) => {
        const limits = boundariesAt(each, n);
        if (!limits.known) throw new Error('speed was given');
        const like = (value: number) => {
          const { ab } = limits.value;
          const zone = zoneOf(level(ab.quantity, value, ab.detector, ab.band), each, n);
          if (!zone.known) throw new Error('the level is of the kind of the table');
          return zones.indexOf(zone.value);
        };
        expect(like(Math.max(a, b))).toBeGreaterThanOrEqual(like(Math.min(a, b)));
        const { ab, bc, cd } = limits.value;
        expect([ab, bc, cd].map(({ value }) => like(value))).toEqual([0, 1, 2]);
        expect([ab, bc, cd].map(({ value }) => like(value * 1.0001))).toEqual([1, 2, 3]);
      },
    ),
  );
});

test('negative: no zone without the speed, with another detector, in another or no band', () => {
  const group2 = table('iso-20816-3-2022-group-2-rigid-velocity');
  expect(zoneOf(inBand(3), group2, speed(1486))).toEqual({ known: true, value: 'C' });
  expect(zoneOf(inBand(3), group2)).toMatchObject({ known: false, missing: [{ what: 'shaft speed' }] });
  expect(zoneOf(inBand(3, 'peak'), group2, speed(1486)).known).toBe(false);
  expect(zoneOf(level('velocity', 0.003, 'rms'), group2, speed(1486))).toMatchObject({
    known: false,
    missing: [{ what: expect.stringContaining('10..1000 Hz') }],
  });
  // Below 600 r/min the band begins at 2 Hz (second-hand).
  expect(zoneOf(inBand(3), group2, speed(599)).known).toBe(false);
  expect(zoneOf(level('velocity', 0.003, 'rms', { low: 2, high: 1000 }), group2, speed(599)).known).toBe(true);
  expect(zoneOf(inBand(3), group2, speed(600)).known).toBe(true);
});

const judged = (facts: Partial<MachineFacts>, each: ZoneTable) =>
  scopeFindings({ ...pump, ...facts }, each, 'P-301')
    .filter(({ rule }) => !['zones/unverified-table', 'zones/machine-kind'].includes(rule))
    .map(({ rule, weight }) => `${rule} ${weight}`);

test('negative: power, speed and support outside the scope block; unknown ones are asked', () => {
  const group2 = table('iso-20816-3-2022-group-2-rigid-velocity');
  expect(judged({}, group2)).toEqual([]);
  expect(judged({ power: stated(si('power', 400e3)) }, group2)).toEqual(['zones/power blocks-issue']);
  expect(judged({ power: stated(si('power', 15e3)) }, group2)).toEqual(['zones/power blocks-issue']);
  expect(judged({ power: { known: false } }, group2)).toEqual(['zones/power question']);
  expect(judged({ speed: stated(span(12)) }, group2)).toEqual(['zones/speed blocks-issue']);
  expect(judged({ speed: stated(span(100, 1486)) }, group2)).toEqual(['zones/speed blocks-issue']);
  expect(judged({ speed: stated(span(120, 30_000)) }, group2)).toEqual([]);
  expect(judged({ speed: { known: false } }, group2)).toEqual(['zones/speed question']);
  expect(judged({ support: { known: false } }, group2)).toEqual(['zones/support question']);
  expect(judged({ support: stated('flexible') }, group2)).toEqual(['zones/support blocks-issue']);
});

test('negative: an unknown between bounds is asked only where the bounds straddle the limit', () => {
  const group2 = table('iso-20816-3-2022-group-2-rigid-velocity');
  const between = (low: number, high: number): Partial<MachineFacts> => ({
    power: { known: false, between: { low: si('power', low), high: si('power', high) } },
  });
  expect(judged(between(100e3, 200e3), group2)).toEqual([]);
  expect(judged(between(200e3, 400e3), group2)).toEqual(['zones/power question']);
  expect(judged(between(400e3, 500e3), group2)).toEqual(['zones/power blocks-issue']);
});

test('negative: the shaft height of an electrical machine decides in place of its power', () => {
  const height = (metres: number): Partial<MachineFacts> => ({ shaftHeight: stated(si('length', metres)) });
  const group1 = table('iso-20816-3-2022-group-1-rigid-velocity');
  const group2 = table('iso-20816-3-2022-group-2-rigid-velocity');
  expect(judged(height(0.315), group1)).toEqual([]);
  expect(judged(height(0.315), group2)).toEqual(['zones/shaft-height blocks-issue']);
  expect(judged(height(0.16), group2)).toEqual([]);
  expect(judged({ shaftHeight: { known: false } }, group2)).toEqual(['zones/shaft-height question']);
});

test('negative: every finding names what was found and against what', () => {
  for (const each of zoneTables) {
    for (const one of scopeFindings(
      { power: { known: false }, speed: stated(span(12)), support: { known: false } },
      each,
      'K-1',
    )) {
      expect(one.limit, one.rule).not.toBe('');
      expect(wording(one)).toMatch(/^K-1: /);
      if (one.weight === 'question') expect(one.asks).toBeDefined();
    }
  }
});

test('negative: limits of an owner are the same record; unordered or unlike ones are refused', () => {
  const boundaries = { ab: inBand(3.2), bc: inBand(5.1), cd: inBand(8.5) };
  const own = ownersTable({
    name: 'plant-specification',
    title: 'Plant specification',
    boundaries,
    reference: 'casing',
    source: { title: 'Plant specification', how: 'read' },
  });
  expect(zoneOf(inBand(5.1), own)).toEqual({ known: true, value: 'B' });
  expect(judged({ power: { known: false } }, own)).toEqual([]);
  expect(scopeFindings(pump, own, 'P-301').map(({ rule }) => rule)).toEqual(['zones/machine-kind']);
  expect(() => zoneTable({ ...own, boundaries: { ...boundaries, bc: inBand(8.6) } })).toThrow(Refusal);
  expect(() => zoneTable({ ...own, boundaries: { ...boundaries, bc: inBand(5.1, 'peak') } })).toThrow(/detector/);
});

test('negative: shaft limits say that they are unverified, where the curve ends, and when the clearance governs', () => {
  const rules = (given: Readonly<Record<string, string>>) =>
    calculate(zoneWorkings[0]!, given).findings.map(({ rule }) => rule);
  expect(rules({ speed: '3600 r/min' })).toEqual(['zones/unverified-table']);
  expect(rules({ speed: '300 r/min' })).toEqual(['zones/unverified-table', 'zones/speed']);
  expect(rules({ speed: '11400 r/min', clearance: '165 um' })).toEqual([
    'zones/unverified-table',
    'zones/clearance-governs',
  ]);
  expect(() => shaftLimits(0)).toThrow(Refusal);
  expect(() => shaftLimits(60, 0)).toThrow(Refusal);
});

test('law: a slower shaft or a wider clearance never lowers a boundary', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 500, noNaN: true }),
      fc.double({ min: 1, max: 10, noNaN: true }),
      fc.double({ min: 1e-5, max: 1e-3, noNaN: true }),
      (n, factor, clearance) => {
        for (const key of ['ab', 'bc', 'cd'] as const) {
          const reference = shaftLimits(n, clearance)[key].value;
          expect(shaftLimits(n / factor, clearance)[key].value).toBeGreaterThanOrEqual(reference);
          expect(shaftLimits(n, clearance * factor)[key].value).toBeGreaterThanOrEqual(reference);
        }
      },
    ),
  );
});

const micrometres = (value: number) => stated(si('length', value * 1e-6));
const journal = { diameter: stated(si('length', 0.11)) };
const shaftTable = () => table('iso-7919-3-shaft');
const clearanceRules = (clearance: number) => {
  const free = boundariesAt(shaftTable(), 190);
  const facts = { ...journal, clearance: micrometres(clearance) };
  return clearanceFindings(facts, shaftTable(), free.known ? free.value : undefined, 'K-11').map(
    ({ rule, weight }) => `${rule} ${weight}`,
  );
};

test('independent: the table held by the clearance gives the same as the formula', () => {
  for (const [speed, clearance] of [
    [190, 165e-6],
    [190, 82.5e-6],
    [60, 400e-6],
  ] as const) {
    const found = boundariesAt(shaftTable(), speed, clearance);
    if (!found.known) throw new Error('speed was given');
    const byFormula = shaftLimits(speed, clearance);
    for (const key of ['ab', 'bc', 'cd'] as const) {
      expect(found.value[key].value).toBeCloseTo(byFormula[key].value, 12);
    }
  }
});

test('negative: a radial clearance entered for the diametral one is asked about and halves B/C to 49.5 µm', () => {
  expect(clearanceRules(165)).toEqual(['zones/clearance-governs notes']);
  expect(clearanceRules(82.5)).toEqual([
    'zones/clearance-radial question',
    'zones/clearance-governs notes',
    'zones/clearance-governs notes',
    'zones/clearance-governs notes',
  ]);
  const found = boundariesAt(shaftTable(), 190, 82.5e-6);
  expect(found.known && found.value.bc.value * 1e6).toBeCloseTo(49.5, 9);
  expect(clearanceRules(1650)).toEqual(['zones/clearance-wide question']);
});

test('negative: no clearance, or one that is unknown, is asked for; a housing table asks for none', () => {
  for (const facts of [journal, { ...journal, clearance: { known: false } as const }]) {
    const found = clearanceFindings(facts, shaftTable(), undefined, 'K-11');
    expect(found.map(({ rule, weight }) => `${rule} ${weight}`)).toEqual(['zones/clearance-not-stated question']);
    expect(found[0]!.asks).toBeDefined();
  }
  const housing = table('iso-20816-3-2022-group-1-rigid-velocity');
  expect(clearanceFindings(journal, housing, undefined, 'K-11')).toEqual([]);
  expect(boundariesAt(housing, 25, 165e-6)).toEqual(boundariesAt(housing, 25));
  expect(() => boundariesAt(shaftTable(), 190, 0)).toThrow(Refusal);
});

test('law: a clearance never raises a boundary, and acceptance and run-out never rise with the speed', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 17, max: 500, noNaN: true }),
      fc.double({ min: 1e-5, max: 1e-3, noNaN: true }),
      fc.double({ min: 1, max: 10, noNaN: true }),
      (speed, clearance, factor) => {
        const [free, held] = [boundariesAt(shaftTable(), speed), boundariesAt(shaftTable(), speed, clearance)];
        if (!free.known || !held.known) throw new Error('speed was given');
        for (const key of ['ab', 'bc', 'cd'] as const) {
          expect(held.value[key].value).toBeLessThanOrEqual(free.value[key].value);
        }
        const [slow, fast] = [shaftAcceptance(speed), shaftAcceptance(speed * factor)];
        expect(fast.value).toBeLessThanOrEqual(slow.value);
        expect(runoutAllowance(fast).value).toBeGreaterThanOrEqual(6.35e-6);
      },
    ),
  );
});
