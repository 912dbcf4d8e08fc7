import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fraction, showFraction, toNumber } from '../quantity/index.ts';
import { bearingFrequencies, bearingOrders, largestElement } from './bearing-frequencies.ts';
import { meshOrders, toothPair } from './mesh-frequencies.ts';
import { frequencyAtSpeed, slipAtFrequency, torqueLaws } from './slip-law.ts';

const stored = JSON.parse(
  readFileSync(new URL('../../../../evidence/machine/kinematics.json', import.meta.url), 'utf8'),
);

const row = fc
  .record({
    elements: fc.integer({ min: 3, max: 40 }),
    filling: fc.double({ min: 0.2, max: 0.99, noNaN: true }),
    pitchDiameter: fc.double({ min: 0.005, max: 4, noNaN: true }),
    contactAngle: fc.double({ min: 0, max: Math.PI / 2, noNaN: true }),
  })
  .map(({ elements, filling, pitchDiameter, contactAngle }) => ({
    elements,
    pitchDiameter,
    contactAngle,
    elementDiameter: filling * largestElement(elements, pitchDiameter),
  }));
const speed = fc.double({ min: 0.01, max: 500, noNaN: true });
const signed = fc.double({ min: -500, max: 500, noNaN: true });
const teeth = fc.integer({ min: 2, max: 400 });

const close = (a: number, b: number, scale = Math.max(Math.abs(a), Math.abs(b))) =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-11 * Math.max(scale, 1e-300));

test('law: outer ring + inner ring = n · speed, outer ring = n · cage, outer ring held', () => {
  fc.assert(
    fc.property(row, speed, (bearing, f) => {
      const found = bearingFrequencies(bearing, f);
      close(found.outerRing + found.innerRing, bearing.elements * f);
      close(found.outerRing, bearing.elements * found.cage);
      close(found.elementSpinTwice, 2 * found.elementSpin);
    }),
  );
});

test('law: only the speed between the rings counts for the passages, whichever ring turns', () => {
  fc.assert(
    fc.property(row, signed, signed, (bearing, inner, outer) => {
      const both = bearingFrequencies(bearing, inner, outer);
      const held = bearingFrequencies(bearing, inner - outer, 0);
      const scale = bearing.elements * (Math.abs(inner) + Math.abs(outer));
      close(both.outerRing, held.outerRing, scale);
      close(both.innerRing, held.innerRing, scale);
      close(both.elementSpin, held.elementSpin, scale * 10);
    }),
  );
});

test('law: every bearing frequency scales with speed and with no absolute size', () => {
  fc.assert(
    fc.property(row, speed, fc.double({ min: 0.01, max: 100, noNaN: true }), (bearing, f, factor) => {
      const larger = {
        ...bearing,
        elementDiameter: bearing.elementDiameter * factor,
        pitchDiameter: bearing.pitchDiameter * factor,
      };
      const [one, other] = [bearingFrequencies(bearing, f), bearingFrequencies(larger, f * factor)];
      for (const key of ['cage', 'outerRing', 'innerRing', 'elementSpin'] as const) {
        expect(Math.abs(other[key] / factor - one[key])).toBeLessThanOrEqual(1e-9 * Math.max(one[key], 1e-12));
      }
    }),
  );
});

test('independent: 60 bearings of rigid bodies that do not slip, passages counted (evidence/machine/kinematics.py)', () => {
  expect(stored.bearings).toHaveLength(60);
  for (const each of stored.bearings) {
    const ours = bearingFrequencies(each.row, each.inner, each.outer);
    close(ours.cage, each.cage);
    close(ours.elementSpin, each.elementSpin);
    // A count over a time T is short by less than one passage.
    for (const ring of ['outerRing', 'innerRing'] as const) {
      expect(ours[ring] - each[ring]).toBeGreaterThanOrEqual(-1e-9);
      expect(ours[ring] - each[ring]).toBeLessThan(1 / each.counted_over + 1e-9);
    }
  }
});

test('law: hunting tooth × lcm(z1, z2) = mesh, and hunting tooth = f1 · f2/(mesh/N_A), exactly', () => {
  fc.assert(
    fc.property(teeth, teeth, (z1, z2) => {
      const orders = meshOrders(z1, z2);
      const { phases } = toothPair(z1, z2);
      const lcm = BigInt((z1 * z2) / phases);
      const hunting = orders.huntingTooth;
      expect(showFraction(fraction(hunting.numerator * lcm, hunting.denominator))).toBe(showFraction(orders.mesh));
      const f2 = z1 / z2;
      close(toNumber(hunting), f2 / (z1 / phases));
      close(toNumber(orders.assemblyPhase) * phases, z1);
      expect(orders.huntingTooth).toEqual(fraction(1, toothPair(z1, z2).turnsToMeet));
    }),
  );
});

test('law: the hunting tooth is the greatest rate at which both wheels return to the same tooth', () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 60 }), fc.integer({ min: 2, max: 60 }), (z1, z2) => {
      const { turnsToMeet } = toothPair(z1, z2);
      const returns = (turns: number) => (turns * z1) % z2 === 0;
      expect(returns(turnsToMeet)).toBe(true);
      for (let turns = 1; turns < turnsToMeet; turns++) expect(returns(turns)).toBe(false);
    }),
  );
});

test('law: line frequency at a speed, then the slip there, gives the speed back, for every torque law', () => {
  const laws = torqueLaws.filter((law) => law !== 'unknown');
  fc.assert(
    fc.property(
      fc.constantFrom(...laws),
      fc.integer({ min: 1, max: 8 }),
      fc.double({ min: 0.001, max: 0.08, noNaN: true }),
      fc.double({ min: 0.2, max: 1, noNaN: true }),
      (law, pairs, slipRatio, share) => {
        const rated = { slip: (slipRatio * 50) / pairs, lineFrequency: 50 };
        const f = share * (50 / pairs - rated.slip);
        const line = frequencyAtSpeed(rated, law, pairs, f, 'motor');
        if (!line.known) throw new Error('the law reaches every speed below rated');
        const slip = slipAtFrequency(rated, law, line.value, 'motor').value;
        if (!slip.known) throw new Error('a known law gives a slip');
        expect(Math.abs(line.value / pairs - slip.value - f)).toBeLessThan(1e-9);
      },
    ),
  );
});

test(`independent: line frequency for a speed as a root finder of scipy ${stored.versions.scipy} gives it`, () => {
  expect(stored.slips).toHaveLength(24);
  for (const { law, pairs, rated, slip, speed: f, line } of stored.slips) {
    const ours = frequencyAtSpeed({ slip, lineFrequency: rated }, law, pairs, f, 'motor');
    expect(ours.known && Math.abs(ours.value / line - 1)).toBeLessThan(1e-10);
  }
});

test('a torque law nobody knows leaves the slip between none and rated, and says what is missing', () => {
  const found = slipAtFrequency({ slip: 0.25, lineFrequency: 50 }, 'unknown', 25, 'P-1/motor');
  expect(found.value).toEqual({ known: false, missing: [{ of: 'P-1/motor', what: 'torque law' }] });
  expect(found.between).toEqual({ low: 0, high: 0.25 });
  expect(slipAtFrequency({ slip: 0.25, lineFrequency: 50 }, 'unknown', 60, 'P-1/motor').between).toBeUndefined();
});

test('law: orders of a ring held and of the other held add to one turn of the cage', () => {
  fc.assert(
    fc.property(row, (bearing) => {
      const orders = bearingOrders(bearing);
      close(orders.cageOfInner + orders.cageOfOuter, 1);
    }),
  );
});
