import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { showMeasure } from '../finding/measure.ts';
import { fraction, sameFraction } from '../quantity/index.ts';
import { calculate } from '../working/working.ts';
import { commonOrder, rowMeetings } from './bladed-rows.ts';
import { coincidences } from './coincidences.ts';
import { trainFindings } from './findings.ts';
import { frequencyTable } from './frequency-table.ts';
import { readTrain, type TypedElement, type TypedTrain } from './reading.ts';
import { linkedTrain, oneElement, wormTrain } from './rules/example-trains.ts';
import { pistonInertia } from './slider-crank.ts';
import { shaftSpeeds } from './speeds.ts';
import { loopOrders } from './toothed-loop.ts';
import { planetaryGear } from './workings/planetary-gear.ts';
import { reciprocatingOrders } from './workings/reciprocating-orders.ts';
import { toothedLoop } from './workings/toothed-loop.ts';

// Longer than most files: what the rarer elements of a train are held against stands together, and the list of evidence names this one file.

const stored = JSON.parse(
  readFileSync(new URL('../../../../evidence/machine/kinematics.json', import.meta.url), 'utf8'),
);

const ratio = (train: TypedTrain, shaft: string) => {
  const found = shaftSpeeds(readTrain(train)).shafts[shaft]!;
  if (!found.known) throw new Error(JSON.stringify(found.missing));
  return found.value.ratio;
};

const row = (train: TypedTrain, name: string) => {
  const table = frequencyTable(readTrain(train));
  const found = table.rows.find((each) => each.line.name === name);
  if (found === undefined) throw new Error(`${name} of ${table.rows.map((each) => each.line.name).join(', ')}`);
  return found;
};

const hertz = (train: TypedTrain, name: string, state: 'lowest' | 'highest' = 'highest') => {
  const cell = row(train, name).cells.find((each) => each.state === state)!.frequency;
  if (!cell.known) throw new Error(`${name}: ${JSON.stringify(cell.missing)}`);
  return cell.value;
};

const rulesOf = (train: TypedTrain) => trainFindings(readTrain(train)).map((each) => each.rule);
const count = fc.integer({ min: 1, max: 60 });

test('law: a worm of z starts is a wheel of z teeth, and its mesh is teeth times the speed of the wheel', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 8 }), fc.integer({ min: 20, max: 90 }), (starts, teeth) => {
      const train = wormTrain({ starts, 'wheel-teeth': teeth });
      expect(sameFraction(ratio(train, 'table'), fraction(starts, teeth))).toBe(true);
      expect(hertz(train, 'pair/mesh')).toBeCloseTo(teeth * hertz(train, 'table/1x'), 9);
    }),
    { numRuns: 40 },
  );
  expect(trainFindings(readTrain(wormTrain({ starts: 1, ratio: 20.5 })))[0]!.asks).toBe('Has the worm 2 starts?');
});

test('law: both wheels of a chain or timing belt turn the same way, and the loop repeats in whole turns of both', () => {
  const wheel = fc.integer({ min: 9, max: 90 });
  fc.assert(
    fc.property(wheel, wheel, fc.integer({ min: 160, max: 400 }), (driving, driven, loop) => {
      const chain = linkedTrain({ kind: 'chain-drive', 'driving-teeth': driving, 'driven-teeth': driven, links: loop });
      const belt = linkedTrain({
        kind: 'timing-belt',
        'driving-teeth': driving,
        'driven-teeth': driven,
        'belt-teeth': loop,
      });
      for (const each of [chain, belt]) {
        expect(sameFraction(ratio(each, 'machine'), fraction(driving, driven))).toBe(true);
        expect(hertz(each, 'link/mesh')).toBeCloseTo(driven * hertz(each, 'machine/1x'), 8);
      }
      expect(hertz(chain, 'link/chain-pass')).toBe(hertz(belt, 'link/belt-pass'));
      const { hunting } = loopOrders({ driving, loop });
      expect(hunting.numerator).toBe(1n);
      expect((hunting.denominator * BigInt(driving)) % BigInt(loop)).toBe(0n);
    }),
    { numRuns: 30 },
  );
  expect(() =>
    calculate(toothedLoop, {
      'driving-teeth': '19',
      'driven-teeth': '57',
      'loop-teeth': '60',
      'driving-speed': '1 Hz',
    }),
  ).toThrow(/wheels of 19 and 57 teeth that touch/);
});

test('law: rotors of a screw machine pass as many pockets as flutes of the female rotor do', () => {
  fc.assert(
    fc.property(count, count, (male, female) => {
      const train: TypedTrain = {
        of: 'C',
        shafts: ['male', 'female'],
        elements: {
          rotors: { kind: 'screw-rotors', male: 'male', female: 'female', 'male-lobes': male, 'female-lobes': female },
        },
        operation: { shaft: 'male', speed: '2970 r/min' },
      };
      expect(sameFraction(ratio(train, 'female'), fraction(-male, female))).toBe(true);
      expect(hertz(train, 'rotors/pocket-pass')).toBeCloseTo(female * hertz(train, 'female/1x'), 8);
    }),
    { numRuns: 30 },
  );
});

const kiln = (rims: Readonly<Record<string, string>> = {}): TypedTrain => ({
  of: 'K-2',
  shafts: ['kiln', 'roller', 'pinion'],
  elements: {
    tyre: {
      kind: 'friction-pair',
      from: 'kiln',
      to: 'roller',
      'driving-diameter': '4.8 m',
      'driven-diameter': '1.2 m',
      ...rims,
    },
    girth: { kind: 'gear-pair', from: 'pinion', to: 'kiln', 'driving-teeth': 23, 'driven-teeth': 220 },
    bearing: {
      kind: 'rolling-bearing',
      on: 'roller',
      elements: 19,
      'element-diameter': '62 mm',
      'pitch-diameter': '460 mm',
      'contact-angle': '9.5 deg',
    },
  },
  operation: { shaft: 'kiln', speed: '1.5..3 r/min' },
});

test('printed: tyre on roller of the reference kiln, 0.1 and 0.2 Hz without creep, with a band below where creep is open', () => {
  const roller = row(kiln(), 'roller/1x');
  expect(hertz(kiln(), 'roller/1x', 'lowest')).toBeCloseTo(0.1, 12);
  expect(hertz(kiln(), 'roller/1x')).toBeCloseTo(0.2, 12);
  expect(roller.cells[1]!.between).toMatchObject({ low: expect.closeTo(0.198, 12), high: expect.closeTo(0.2, 12) });
  expect(hertz(kiln(), 'bearing/outer-ring')).toBeCloseTo(1.6474, 4);
  expect(rulesOf(kiln())).toEqual(['machine/creep-not-stated']);
  expect(rulesOf(kiln({ creep: '0..0.1 %' }))).toEqual([]);
});

test('trap: 4 × kiln and 1 × roller beat at the rate of the creep: two phase references, not a spectrum', () => {
  const beat = coincidences(readTrain(kiln())).find(
    ({ a, b }) => a.line.name === 'kiln/1x' && a.harmonic === 4 && b.line.name === 'roller/1x',
  )!;
  expect(beat.separable).toBe('not everywhere');
  expect(beat.nearest.difference).toBe(0);
  expect(beat.spread).toBeCloseTo(0.01 * 4 * 0.025, 12);
  expect(beat.instead).toContain('phase reference on each of the two shafts');
  // With gears in the place of the rims the same two orders are one, and nothing is reported.
  const geared: TypedTrain = {
    ...kiln(),
    elements: {
      tyre: { kind: 'gear-pair', from: 'kiln', to: 'roller', 'driving-teeth': 80, 'driven-teeth': 20 } as TypedElement,
    },
    shafts: ['kiln', 'roller'],
  };
  expect(coincidences(readTrain(geared))).toEqual([]);
});

test('trap: 12 r/min typed as 12 Hz, tyre and roller exchanged, both rows counted', () => {
  expect(hertz(kiln({ 'driving-diameter': '1.2 m', 'driven-diameter': '4.8 m' }), 'roller/1x') * 60).toBeCloseTo(
    0.75,
    9,
  );
  const plated = (plate: string) => ({ ...kiln({ creep: '0..0.1 %' }), plates: { roller: plate } });
  expect(rulesOf(plated('12 r/min'))).toEqual([]);
  expect(rulesOf(plated('0.75 r/min'))).toEqual(['machine/plate-against-train']);
  expect(rulesOf(plated('12 Hz'))).toEqual(['machine/hertz-for-revolutions']);
  const rows = kiln({ creep: '0..0.1 %' });
  const doubled = {
    ...rows,
    elements: { ...rows.elements, bearing: { ...rows.elements.bearing!, elements: 38, rows: 2 } as TypedElement },
  };
  expect(rulesOf(doubled)).toContain('machine/rows-counted-twice');
});

const compressor = (speed: string): TypedTrain => ({
  of: 'C-201B',
  shafts: ['crankshaft'],
  elements: {
    motor: { kind: 'synchronous-motor', on: 'crankshaft', poles: 12, supply: 'mains', 'line-frequency': '50 Hz' },
    frame: { kind: 'reciprocating-machine', on: 'crankshaft', throws: 4, acting: 'double', stroke: '280 mm' },
  },
  operation: { shaft: 'crankshaft', speed },
});

test('printed: rod-load reversal of the reference compressor at 16.667 Hz; 2x of the shaft is the same line and is not reported', () => {
  expect(hertz(compressor('500 r/min'), 'frame/rod-load-reversal')).toBeCloseTo(16.667, 3);
  expect(hertz(compressor('500 r/min'), 'frame/pulsation')).toBeCloseTo(66.667, 3);
  const [found, ...more] = coincidences(readTrain(compressor('500 r/min')));
  expect(found).toMatchObject({ separable: 'never' });
  expect(found!.a.harmonic).toBe(12);
  // Six times the reversals are twelve turns too: each pair is one at every speed.
  for (const each of more) expect(each.separable).toBe('never');
});

test('trap: a synchronous motor cannot run at 497 r/min', () => {
  expect(rulesOf(compressor('500 r/min'))).toEqual([]);
  const [found] = trainFindings(readTrain(compressor('497 r/min')));
  expect(found!.rule).toBe('machine/synchronous-speed-against-poles');
  expect(showMeasure(found!.found ?? '')).toContain('497');
  expect(showMeasure(found!.limit ?? '')).toContain('500');
});

test('independent: inertia of a piston against the exact slider crank, 20 cranks (evidence/machine/kinematics.py)', () => {
  expect(stored.cranks).toHaveLength(20);
  for (const { radius, rod, speed, first, second } of stored.cranks) {
    const ours = pistonInertia(radius, rod, speed);
    const λ = radius / rod;
    expect(Math.abs(ours.primary / first - 1)).toBeLessThan(1e-9);
    // The first term of the series: the rest is λ²/4 of it and less.
    expect(second / ours.secondary - 1).toBeGreaterThan(0);
    expect(second / ours.secondary - 1).toBeLessThan(λ ** 2 / 4 + λ ** 4 / 6);
  }
});

test('a rod shorter than the crank, and a stroke of nothing, are refused by name', () => {
  const given = { speed: '500 r/min', throws: '4', acting: 'double', stroke: '280 mm' };
  expect(() => calculate(reciprocatingOrders, { ...given, 'rod-length': '100 mm' })).toThrow(/longer than the crank/);
  expect(() => calculate(reciprocatingOrders, { ...given, stroke: '0 mm' })).toThrow(/stroke/);
});

test('independent: node diameters between runner and guide vanes, counted in a Fourier transform (the same script)', () => {
  for (const { running, standing, fewest, all } of stored.bladeMeetings) {
    const ours = rowMeetings({ running, standing });
    expect(ours[0]!.nodeDiameters).toBe(fewest);
    for (const { m, n, nodes } of all) {
      expect(ours.find((each) => each.m === m && each.n === n)!.nodeDiameters).toBe(nodes);
    }
  }
});

test('law: the common order of two rows is a multiple of both, and no smaller one is', () => {
  fc.assert(
    fc.property(count, count, (running, standing) => {
      const order = commonOrder({ running, standing });
      expect([order % running, order % standing]).toEqual([0, 0]);
      expect(order * Number(gcd(running, standing))).toBe(running * standing);
    }),
  );
});

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}

test('a hydraulic unit gives blade and guide-vane pass, and the rope as a band', () => {
  const unit = oneElement({ kind: 'hydraulic-turbine', on: 'fan', 'runner-blades': 13, 'guide-vanes': 20 });
  const at300 = { ...unit, operation: { shaft: 'fan', speed: '300 r/min' } };
  expect(hertz(at300, 'drive-end/blade-pass')).toBeCloseTo(65, 12);
  expect(hertz(at300, 'drive-end/guide-vane-pass')).toBeCloseTo(100, 12);
  // 2 × 20 − 3 × 13 = 1: the third multiple of the blade pass reaches farthest.
  expect(hertz(at300, 'drive-end/blade-guide-vane-field')).toBeCloseTo(195, 12);
  const rope = row(at300, 'drive-end/rope').cells[1]!.between!;
  expect([rope.low, rope.high]).toEqual([expect.closeTo(1, 12), expect.closeTo(2, 12)]);
});

const screen = (stroke: string, speed = '920 r/min', load = 'turns with the inner ring'): TypedTrain => ({
  of: 'SC-7',
  shafts: ['exciter'],
  elements: {
    exciter: { kind: 'screen-exciter', on: 'exciter', stroke, path: 'circular' },
    bearing: {
      kind: 'rolling-bearing',
      on: 'exciter',
      elements: 16,
      'element-diameter': '24.5 mm',
      'pitch-diameter': '170 mm',
      'contact-angle': '12.5 deg',
      load,
    },
  },
  operation: { shaft: 'exciter', speed },
});

test('trap: on a screen the inner-ring line has no side lines and the outer-ring line has them, the reverse of a pump', () => {
  const names = (load: string) =>
    frequencyTable(readTrain(screen('9 mm pp', '920 r/min', load))).rows.map((each) => each.line.name);
  expect(names('turns with the inner ring').filter((name) => /ring-(lower|upper)/.test(name))).toEqual([
    'bearing/outer-ring-lower',
    'bearing/outer-ring-upper',
  ]);
  expect(names('stands still').filter((name) => /ring-(lower|upper)/.test(name))).toEqual([
    'bearing/inner-ring-lower',
    'bearing/inner-ring-upper',
  ]);
  expect(hertz(screen('9 mm pp'), 'bearing/outer-ring-upper')).toBeCloseTo(105.4073 + 15.3333, 3);
  expect(row(screen('9 mm pp'), 'bearing/inner-ring').line.meaning).toContain('no side lines');
  const wrong = trainFindings(readTrain(screen('9 mm pp', '920 r/min', 'stands still')));
  expect(wrong.map((each) => each.rule)).toEqual(['machine/load-of-bearing']);
});

test('trap: a stroke of 4.5 mm amplitude typed as peak-to-peak halves the throw to 2.13 g and is asked about', () => {
  expect(rulesOf(screen('9 mm pp'))).toEqual([]);
  expect(rulesOf(screen('4.5 mm peak'))).toEqual([]);
  const [found] = trainFindings(readTrain(screen('4.5 mm pp')));
  expect(found!.rule).toBe('machine/throw-plausible');
  expect(showMeasure(found!.found ?? '')).toContain('2.13 g');
  expect(showMeasure(found!.asks ?? '')).toContain('amplitude');
});

test('trap: 920 r/min is the motor before the belt: the plate of the exciter contradicts the train', () => {
  const belted: TypedTrain = {
    ...screen('9 mm pp', '920 r/min'),
    shafts: ['motor', 'exciter'],
    operation: { shaft: 'motor', speed: '920 r/min' },
    plates: { exciter: '920 r/min' },
  };
  const belt = {
    kind: 'belt-drive',
    from: 'motor',
    to: 'exciter',
    'driving-diameter': '200 mm',
    'driven-diameter': '260 mm',
    'belt-length': '2.4 m',
    slip: '0.5..1 %',
  };
  const asked = rulesOf({ ...belted, elements: { ...belted.elements, belt } });
  expect(asked).toContain('machine/plate-against-train');
});

test('trap: a stage pair entered 24/98 instead of 98/24 is recognised from its ratio and from the plate behind it', () => {
  const stage = (driving: number, driven: number) =>
    linkedTrain(
      { kind: 'gear-pair', 'driving-teeth': driving, 'driven-teeth': driven, ratio: 24 / 98 },
      { machine: `${1486 * (98 / 24)} r/min` },
    );
  expect(rulesOf(stage(98, 24))).toEqual(['machine/common-factor']);
  const wrong = trainFindings(readTrain(stage(24, 98)));
  expect(wrong.map((each) => each.rule)).toEqual(
    expect.arrayContaining(['machine/ratio-against-teeth', 'machine/plate-against-train']),
  );
  expect(showMeasure(wrong.find((each) => each.rule === 'machine/ratio-against-teeth')!.asks ?? '')).toContain(
    'exchanged',
  );
});

test('a bevel pair turns as an outward pair does, and branches of one wheel keep their own speeds', () => {
  const gear = (from: string, to: string, driving: number, driven: number, meshing = 'external') => ({
    kind: 'gear-pair',
    from,
    to,
    'driving-teeth': driving,
    'driven-teeth': driven,
    meshing,
  });
  const branching: TypedTrain = {
    of: 'G-9',
    shafts: ['in', 'low', 'left', 'right', 'out'],
    elements: {
      bevel: gear('in', 'low', 19, 71, 'bevel'),
      left: gear('low', 'left', 90, 30),
      right: gear('low', 'right', 90, 45),
      joined: gear('left', 'out', 30, 60),
      again: gear('right', 'out', 45, 60),
    },
    operation: { shaft: 'in', speed: '1486 r/min' },
  };
  expect(rulesOf(branching).filter((rule) => rule === 'machine/relations-agree')).toEqual([]);
  expect(sameFraction(ratio(branching, 'left'), fraction(3 * 19, 71))).toBe(true);
  expect(sameFraction(ratio(branching, 'right'), fraction(2 * 19, 71))).toBe(true);
  expect(sameFraction(ratio(branching, 'out'), fraction(-3 * 19, 2 * 71))).toBe(true);
});

test('planetary-gear refuses what cannot be: the held member driven, a sun larger than the ring', () => {
  const given = {
    'sun-teeth': '21',
    'planet-teeth': '39',
    'ring-teeth': '99',
    planets: '3',
    fixed: 'ring',
    'driven-by': 'carrier',
    'input-speed': '8.5 r/min',
  };
  expect(() => calculate(planetaryGear, { ...given, 'driven-by': 'ring' })).toThrow(/what is held is not driven/);
  expect(() => calculate(planetaryGear, { ...given, 'sun-teeth': '99', 'ring-teeth': '21' })).toThrow(/exchanged/);
  const wrong = calculate(planetaryGear, { ...given, 'planet-teeth': '38' });
  expect(wrong.findings.map(({ rule, weight }) => `${rule} ${weight}`)).toEqual([
    'machine/planetary-geometry blocks-issue',
  ]);
  expect(calculate(planetaryGear, { ...given, planets: '7' }).findings[0]!.rule).toBe('machine/planets-assemble');
});
