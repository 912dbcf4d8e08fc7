import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Refusal } from '../../quantity/index.ts';
import { calculate } from '../../working/index.ts';
import { compared } from '../../working/printed.ts';
import {
  type Bracket,
  bracketFirstMode,
  bracketFirstModeWorking,
  type HeldMagnet,
  loadedFrequencyRatio,
  loadedMotionRatio,
  magnetGivesAt,
  magnetHolding,
  magnetHoldsTo,
} from './index.ts';
import { mountingEvidence } from './mounting-evidence.ts';

interface Stored {
  readonly brackets: readonly (Omit<Bracket, 'endMass'> & { readonly end_mass: number; readonly firstMode: number })[];
  readonly magnets: readonly (HeldMagnet & { readonly along: number })[];
}
const stored = JSON.parse(
  readFileSync(new URL('../../../../../evidence/mounting/mounting.json', import.meta.url), 'utf8'),
) as Stored;

test('printed: bracket, mass loading and magnet (textbooks and by hand)', () => {
  for (const each of mountingEvidence.flatMap(compared)) expect(each.within, JSON.stringify(each)).toBe(true);
});

test('independent: first mode of brackets agrees with finite elements (numpy, scipy.linalg) to 1e-6', () => {
  for (const { firstMode, end_mass, ...bracket } of stored.brackets) {
    expect(bracketFirstMode({ ...bracket, endMass: end_mass }) / firstMode).toBeCloseTo(1, 6);
  }
});

test('independent: a magnet slides or tips where a linear programme finds no forces that hold it (scipy.optimize)', () => {
  for (const { along, ...magnet } of stored.magnets) {
    const { slips, tips } = magnetGivesAt(magnet);
    expect(Math.min(slips, tips)).toBeCloseTo(along, 6);
  }
});

const sizes = fc.record({
  length: fc.double({ min: 0.02, max: 1, noNaN: true }),
  width: fc.double({ min: 0.005, max: 0.2, noNaN: true }),
  thickness: fc.double({ min: 0.002, max: 0.05, noNaN: true }),
  modulus: fc.constantFrom(70e9, 205e9),
  density: fc.constantFrom(2700, 7850),
  endMass: fc.double({ min: 0, max: 5, noNaN: true }),
});

test('law: a bracket with a heavy end tends to √(3EI/(mL³)), and is never above it nor above the bare beam', () => {
  fc.assert(
    fc.property(sizes, (bracket) => {
      const { length, width, thickness, modulus, endMass } = bracket;
      const mode = bracketFirstMode(bracket);
      const stiffness = (3 * modulus * width * thickness ** 3) / 12 / length ** 3;
      if (endMass > 0) expect(mode).toBeLessThan((Math.sqrt(stiffness / endMass) / (2 * Math.PI)) * (1 + 1e-9));
      expect(mode).toBeLessThanOrEqual(bracketFirstMode({ ...bracket, endMass: 0 }) * (1 + 1e-12));
      const heavy = 1e6;
      const limit = Math.sqrt(stiffness / heavy) / (2 * Math.PI);
      expect(bracketFirstMode({ ...bracket, endMass: heavy }) / limit).toBeCloseTo(1, 4);
    }),
  );
});

test('law: a bracket twice as thick, without an end mass, has twice the mode; twice as long, a quarter; width is nothing', () => {
  fc.assert(
    fc.property(sizes, (sized) => {
      const bracket = { ...sized, endMass: 0 };
      const mode = bracketFirstMode(bracket);
      expect(bracketFirstMode({ ...bracket, thickness: 2 * bracket.thickness }) / mode).toBeCloseTo(2, 9);
      expect(bracketFirstMode({ ...bracket, length: 2 * bracket.length }) / mode).toBeCloseTo(0.25, 9);
      expect(bracketFirstMode({ ...bracket, width: 2 * bracket.width }) / mode).toBeCloseTo(1, 9);
    }),
  );
});

test('law: mass loading: the square of the frequency ratio is the motion ratio; no mass changes nothing', () => {
  const mass = fc.double({ min: 1e-3, max: 1e3, noNaN: true });
  fc.assert(
    fc.property(mass, mass, (local, added) => {
      expect(loadedFrequencyRatio(local, added) ** 2).toBeCloseTo(loadedMotionRatio(local, added), 12);
      expect(loadedFrequencyRatio(local, 0)).toBe(1);
      expect(loadedFrequencyRatio(local, added)).toBeLessThan(1);
    }),
  );
});

test('law: a magnet holds less the heavier and taller it stands, and never lifts before it slips for friction below one', () => {
  const magnets = fc.record({
    pull: fc.double({ min: 5, max: 500, noNaN: true }),
    mass: fc.double({ min: 0.02, max: 1, noNaN: true }),
    height: fc.double({ min: 0.005, max: 0.1, noNaN: true }),
    foot: fc.double({ min: 0.005, max: 0.08, noNaN: true }),
    friction: fc.double({ min: 0.05, max: 0.9, noNaN: true }),
  });
  fc.assert(
    fc.property(magnets, (magnet) => {
      const { acceleration } = magnetHoldsTo(magnet);
      expect(magnetHoldsTo({ ...magnet, mass: 2 * magnet.mass }).acceleration).toBeLessThanOrEqual(acceleration);
      expect(magnetHoldsTo({ ...magnet, height: 2 * magnet.height }).acceleration).toBeLessThanOrEqual(acceleration);
      const { slips, lifts } = magnetGivesAt(magnet);
      expect(slips).toBeLessThanOrEqual(lifts);
    }),
  );
});

test('negative: a bracket of nothing known is refused; a magnet that falls by itself says so; an rms is no peak', () => {
  const given = { length: '100 mm', width: '40 mm', thickness: '10 mm', 'end-mass': '150 g' };
  expect(() => calculate(bracketFirstModeWorking, given)).toThrow(Refusal);
  expect(() => calculate(bracketFirstModeWorking, { ...given, length: '0 mm', material: 'steel' })).toThrow(Refusal);
  const magnet = { pull: '10 N', mass: '500 g', height: '60 mm', foot: '12 mm', friction: '0.15' };
  const findings = calculate(magnetHolding, { ...magnet, acceleration: '2 g rms' }).findings;
  expect(findings.map((each) => each.rule)).toEqual(['magnet/weight', 'magnet/detector']);
});
