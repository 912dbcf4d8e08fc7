import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Fraction, fraction, multiplied, sameFraction, showFraction } from '../quantity/index.ts';
import { eliminate, type LinearEquation } from './elimination.ts';
import { readTrain, type TypedElement } from './reading.ts';
import { shaftSpeeds } from './speeds.ts';

const stored = JSON.parse(
  readFileSync(new URL('../../../../evidence/machine/kinematics.json', import.meta.url), 'utf8'),
);

interface Link {
  readonly from: string;
  readonly to: string;
  readonly driving: number;
  readonly driven: number;
  readonly internal: boolean;
}

function gearTrain(shafts: readonly string[], links: readonly Link[], reference = shafts[0]!) {
  const elements: Record<string, TypedElement> = {};
  for (const [index, link] of links.entries()) {
    elements[`g${index}`] = {
      kind: 'gear-pair',
      from: link.from,
      to: link.to,
      'driving-teeth': link.driving,
      'driven-teeth': link.driven,
      meshing: link.internal ? 'internal' : 'external',
    };
  }
  return readTrain({ of: 'G', shafts, elements, operation: { shaft: reference, speed: '10 Hz' } });
}

const ratioOf = (speeds: ReturnType<typeof shaftSpeeds>, shaft: string): Fraction => {
  const found = speeds.shafts[shaft]!;
  if (!found.known) throw new Error(`${shaft}: ${JSON.stringify(found.missing)}`);
  return found.value.ratio;
};

test('independent: 40 gear networks, ratios along the path in another language (evidence/machine/kinematics.py)', () => {
  expect(stored.gearTrains).toHaveLength(40);
  for (const { shafts, links, ratios } of stored.gearTrains) {
    const speeds = shaftSpeeds(gearTrain(shafts, links));
    for (const shaft of shafts) {
      const ours = ratioOf(speeds, shaft);
      expect(`${ours.numerator}/${ours.denominator}`, shaft).toBe(ratios[shaft]);
    }
    expect(speeds.disagreements).toEqual([]);
  }
});

/** 0 = z_s·sun + z_r·ring − (z_s + z_r)·carrier. */
const planetary = (sun: string, ring: string, carrier: string, zs: number, zr: number): LinearEquation =>
  new Map([
    [sun, fraction(zs)],
    [ring, fraction(zr)],
    [carrier, fraction(-(zs + zr))],
  ]);

test('independent: 30 planetary stages of three shafts, by the Willis equation (evidence/machine/kinematics.py)', () => {
  expect(stored.planetaryStages).toHaveLength(30);
  for (const { sun, ring, held, driven, other, ratio } of stored.planetaryStages) {
    const stage = planetary('sun', 'ring', 'carrier', sun, ring);
    const { solved } = eliminate([stage, new Map([[held, fraction(1)]])], driven);
    const ours = solved.get(other)!;
    expect(`${ours.numerator}/${ours.denominator}`).toBe(ratio);
  }
});

/** 0 = z_1·a + z_2·b. */
const pair = (a: string, b: string, z1: number, z2: number): LinearEquation =>
  new Map([
    [a, fraction(z1)],
    [b, fraction(z2)],
  ]);

test('printed: test gearbox of NREL/TP-5000-51885 (from memory): ratio 81.49, 22.09 r/min becomes 1800 r/min', () => {
  const equations = [
    new Map([['ring', fraction(1)]]),
    planetary('sun', 'ring', 'rotor', 21, 99),
    pair('sun', 'middle', 82, 23),
    pair('middle', 'fast', 88, 22),
  ];
  const fast = eliminate(equations, 'rotor').solved.get('fast')!;
  const ratio = Number(fast.numerator) / Number(fast.denominator);
  expect(ratio).toBeCloseTo(81.49, 2);
  expect(22.09 * ratio).toBeGreaterThan(1799.5);
  expect(22.09 * ratio).toBeLessThan(1800.5);
});

test('printed: helicopter gearbox (NASA reports, from memory): 6060 r/min becomes a rotor of 347.5 r/min', () => {
  const equations = [
    pair('input', 'sun', 19, 71),
    new Map([['ring', fraction(1)]]),
    planetary('sun', 'ring', 'rotor', 27, 99),
  ];
  const rotor = eliminate(equations, 'input').solved.get('rotor')!;
  expect(Math.abs((6060 * Number(rotor.numerator)) / Number(rotor.denominator))).toBeCloseTo(347.5, 1);
});

test('law: along any row of gears the ratio is the exact product, in whatever order the gears are listed', () => {
  const tooth = fc.integer({ min: 7, max: 199 });
  fc.assert(
    fc.property(
      fc.array(fc.tuple(tooth, tooth, fc.boolean()), { minLength: 1, maxLength: 9 }),
      fc.infiniteStream(fc.nat()),
      ([...pairs], order) => {
        const shafts = Array.from({ length: pairs.length + 1 }, (_, index) => `s${index}`);
        const links = pairs.map(([driving, driven, internal], index) => ({
          from: shafts[index]!,
          to: shafts[index + 1]!,
          driving,
          driven,
          internal,
        }));
        const shuffled = links
          .map((link) => ({ link, key: order.next().value as number }))
          .sort((a, b) => a.key - b.key)
          .map(({ link }) => link);
        const speeds = shaftSpeeds(gearTrain(shafts, shuffled));
        let product = fraction(1);
        for (const [index, [driving, driven, internal]] of pairs.entries()) {
          product = multiplied(product, fraction(internal ? driving : -driving, driven));
          expect(sameFraction(ratioOf(speeds, shafts[index + 1]!), product)).toBe(true);
        }
      },
    ),
  );
});

test('law: seen from any other shaft as reference, every ratio is divided by that shaft', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...(stored.gearTrains as { shafts: string[]; links: Link[] }[])),
      fc.nat(),
      (each, pick) => {
        const other = each.shafts[pick % each.shafts.length]!;
        const first = shaftSpeeds(gearTrain(each.shafts, each.links));
        const second = shaftSpeeds(gearTrain(each.shafts, each.links, other));
        for (const shaft of each.shafts) {
          const back = multiplied(ratioOf(second, shaft), ratioOf(first, other));
          expect(sameFraction(back, ratioOf(first, shaft))).toBe(true);
        }
      },
    ),
  );
});

test('a surplus path that agrees is let through, one that does not is reported and leaves no speed', () => {
  const links = (driven: number): readonly Link[] => [
    { from: 'a', to: 'b', driving: 25, driven: 84, internal: false },
    { from: 'a', to: 'b', driving: 50, driven, internal: false },
  ];
  expect(shaftSpeeds(gearTrain(['a', 'b'], links(168))).disagreements).toEqual([]);
  const apart = shaftSpeeds(
    gearTrain(['a', 'b', 'c'], [...links(167), { from: 'b', to: 'c', driving: 20, driven: 30, internal: false }]),
  );
  expect(apart.disagreements).toHaveLength(1);
  const [found] = apart.disagreements;
  expect(found).toMatchObject({ element: 'g1', against: ['g0'], shaft: 'b' });
  expect(showFraction(found!.byThis!)).toBe('-50/167');
  expect(showFraction(found!.byOthers!)).toBe('-25/84');
  expect(apart.shafts.b).toEqual({ known: false, missing: [{ of: 'G/g0 and g1', what: 'ratios that agree' }] });
  expect(apart.shafts.c!.known).toBe(false);
});

test('a shaft that is not reached names the element that lacks something, or that nothing drives it', () => {
  const train = readTrain({
    of: 'F-2',
    shafts: ['motor', 'lay', 'fan', 'lonely'],
    elements: {
      gear: { kind: 'gear-pair', from: 'motor', to: 'lay', 'driving-teeth': 20, 'driven-teeth': 'unknown' },
      coupling: { kind: 'coupling', from: 'lay', to: 'fan' },
    },
    operation: { shaft: 'motor', speed: '1486 r/min' },
  });
  const { shafts } = shaftSpeeds(train);
  const missing = { known: false, missing: [{ of: 'F-2/gear', what: 'driven teeth' }] };
  expect(shafts.lay).toEqual(missing);
  expect(shafts.fan).toEqual(missing);
  expect(shafts.lonely).toEqual({ known: false, missing: [{ of: 'F-2', what: "what drives shaft 'lonely'" }] });
});

test('two belts in a row: the exact ratio is that of the diameters, and both slips multiply in the band', () => {
  const belt = (from: string, to: string) => ({
    kind: 'belt-drive',
    from,
    to,
    'driving-diameter': '180 mm',
    'driven-diameter': '360 mm',
    'belt-length': '2.5 m',
  });
  const train = readTrain({
    of: 'F-3',
    shafts: ['motor', 'lay', 'fan'],
    elements: { one: belt('motor', 'lay'), two: belt('lay', 'fan') },
    operation: { shaft: 'motor', speed: '1486 r/min' },
  });
  const fan = shaftSpeeds(train).shafts.fan!;
  expect(fan.known && showFraction(fan.value.ratio)).toBe('1/4');
  expect(fan.known && fan.value.low).toBeCloseTo(0.98 ** 2, 12);
  expect(fan.known && fan.value.high).toBe(1);
  const backwards = shaftSpeeds({ ...train, operation: { ...train.operation, by: 'shaft', shaft: 'fan' } as never });
  const motor = backwards.shafts.motor!;
  expect(motor.known && motor.value.high).toBeCloseTo(1 / 0.98 ** 2, 12);
});
