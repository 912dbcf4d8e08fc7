import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { showMeasure } from '../finding/measure.ts';
import { fraction, multiplied, plus, sameFraction, showFraction, toNumber } from '../quantity/index.ts';
import { trainFindings } from './findings.ts';
import { frequencyTable } from './frequency-table.ts';
import {
  assemblyShare,
  inPhase,
  ordersAtRing,
  type PlanetaryTeeth,
  planetaryFrequencies,
  planetaryMembers,
  planetWindow,
  ratioWithHeld,
  sunWindow,
  turnsPerInput,
  willisFactors,
} from './planetary-frequencies.ts';
import { readTrain, type TypedElement } from './reading.ts';
import { planetaryTrain } from './rules/example-trains.ts';
import { shaftSpeeds } from './speeds.ts';

// Longer than most files: what planetary stages are held against stands together, and the list of evidence names this one file.

const stored = JSON.parse(
  readFileSync(new URL('../../../../evidence/machine/kinematics.json', import.meta.url), 'utf8'),
);

interface Rolled {
  readonly teeth: PlanetaryTeeth;
  readonly sunSpeed: number;
  readonly ringSpeed: number;
  readonly carrier: number;
  readonly planet: number;
  readonly planetSpin: number;
  readonly mesh: number;
  readonly sunFault: number;
  readonly ringFault: number;
  readonly counted_over: number;
  readonly planetWindow: number;
  readonly sunWindow: number;
  readonly goIn: boolean;
  readonly orders: readonly (readonly number[])[];
}
const sets: readonly Rolled[] = stored.planetSets;

test('independent: 60 stages of rims that roll, passages counted (evidence/machine/kinematics.py)', () => {
  expect(sets).toHaveLength(60);
  for (const each of sets) {
    const factors = willisFactors(each.teeth);
    const carrier = -(factors.sun * each.sunSpeed + factors.ring * each.ringSpeed) / factors.carrier;
    expect(Math.abs(carrier - each.carrier)).toBeLessThan(1e-11 * 60);
    const ours = planetaryFrequencies(each.teeth, each.sunSpeed, each.carrier);
    expect(Math.abs(ours.mesh - each.mesh)).toBeLessThan(1e-9);
    expect(Math.abs(ours.planetSpin - each.planetSpin)).toBeLessThan(1e-10);
    // A count over a time T is short by less than one passage.
    for (const fault of ['sunFault', 'ringFault'] as const) {
      expect(ours[fault] - each[fault]).toBeGreaterThanOrEqual(-1e-9);
      expect(ours[fault] - each[fault]).toBeLessThan(1 / each.counted_over + 1e-9);
    }
  }
});

test('independent: windows stepped turn by turn, teeth laid into each other, planets added up at the ring (the same script)', () => {
  for (const { teeth, planetWindow: stepped, sunWindow: steppedSun, goIn, orders } of sets) {
    expect(planetWindow(teeth)).toBe(stepped);
    expect(sunWindow(teeth)).toBe(steppedSun);
    expect(assemblyShare(teeth).denominator === 1n, JSON.stringify(teeth)).toBe(goIn);
    for (const [index, found] of orders.entries()) expect(ordersAtRing(teeth, index + 1)).toEqual(found);
  }
  expect(sets.some(({ goIn }) => goIn) && sets.some(({ goIn }) => !goIn)).toBe(true);
  expect(sets.some(({ orders }) => orders.some((each) => each.length === 2))).toBe(true);
});

const tooth = fc.integer({ min: 12, max: 120 });
const teeth = fc
  .record({ sun: tooth, planet: tooth, planets: fc.integer({ min: 2, max: 7 }) })
  .map((each): PlanetaryTeeth => ({ ...each, ring: each.sun + 2 * each.planet }));
const signed = fc.double({ min: -300, max: 300, noNaN: true });
const member = fc.constantFrom(...planetaryMembers);

test('law: z_r·|f_c − f_r| = z_s·|f_s − f_c| whichever members turn', () => {
  fc.assert(
    fc.property(teeth, signed, signed, (counts, sun, ring) => {
      const carrier = (counts.sun * sun + counts.ring * ring) / (counts.sun + counts.ring);
      const { mesh } = planetaryFrequencies(counts, sun, carrier);
      const scale = counts.ring * (Math.abs(sun) + Math.abs(ring)) + 1e-12;
      expect(Math.abs(mesh - counts.ring * Math.abs(carrier - ring))).toBeLessThanOrEqual(1e-12 * scale);
    }),
  );
});

test('law: any member held and any other driven, Willis holds exactly, and driving back gives the input back', () => {
  fc.assert(
    fc.property(teeth, member, member, (counts, held, driven) => {
      fc.pre(held !== driven);
      const turns = turnsPerInput(counts, held, driven);
      const factors = willisFactors(counts);
      const sum = planetaryMembers.reduce(
        (total, each) => plus(total, multiplied(fraction(factors[each]), turns[each])),
        fraction(0),
      );
      expect(sum.numerator).toBe(0n);
      const follows = planetaryMembers.find((each) => each !== held && each !== driven)!;
      const back = turnsPerInput(counts, held, follows);
      expect(sameFraction(multiplied(turns[follows], back[driven]), fraction(1))).toBe(true);
    }),
  );
});

test('law: every frequency scales with speed, turns over with it, and does not change when all turn together', () => {
  fc.assert(
    fc.property(
      teeth,
      signed,
      signed,
      fc.double({ min: 0.01, max: 50, noNaN: true }),
      (counts, sun, carrier, factor) => {
        const one = planetaryFrequencies(counts, sun, carrier);
        const scaled = planetaryFrequencies(counts, -factor * sun, -factor * carrier);
        const carried = planetaryFrequencies(counts, sun + 7, carrier + 7);
        for (const key of Object.keys(one) as (keyof typeof one)[]) {
          const scale = 1000 * counts.sun * (Math.abs(sun) + Math.abs(carrier) + 7);
          expect(Math.abs(scaled[key] - factor * one[key])).toBeLessThanOrEqual(1e-13 * factor * scale);
          expect(Math.abs(carried[key] - one[key])).toBeLessThanOrEqual(1e-13 * scale);
        }
        expect(one.planetFault).toBe(2 * one.planetFaultOneFlank);
      },
    ),
  );
});

test('law: the orders at the ring are whole multiples of the planets, none nearer, and the mesh where it is one', () => {
  fc.assert(
    fc.property(teeth, fc.integer({ min: 1, max: 5 }), (counts, harmonic) => {
      const orders = ordersAtRing(counts, harmonic);
      const mesh = harmonic * counts.ring;
      for (const order of orders) {
        expect(order % counts.planets).toBe(0);
        expect(Math.abs(order - mesh)).toBeLessThanOrEqual(counts.planets / 2);
      }
      if (inPhase(counts)) expect(orders).toEqual([mesh]);
    }),
  );
});

test('law: a train with a planetary stage gives the exact ratios of the Willis equation, whichever member is held', () => {
  for (const { sun, ring, held, driven, other, ratio } of stored.planetaryStages) {
    const speeds = shaftSpeeds(
      readTrain({
        of: 'G',
        shafts: [driven, other],
        elements: {
          stage: {
            kind: 'planetary-stage',
            ...Object.fromEntries(planetaryMembers.map((each) => [each, each === held ? 'fixed' : each])),
            'sun-teeth': sun,
            'planet-teeth': (ring - sun) / 2,
            'ring-teeth': ring,
            planets: 3,
          } as unknown as TypedElement,
        },
        operation: { shaft: driven, speed: '10 Hz' },
      }),
    );
    const found = speeds.shafts[other]!;
    expect(found.known && `${found.value.ratio.numerator}/${found.value.ratio.denominator}`).toBe(ratio);
  }
});

test('independent: 40 networks of planetary stages that share shafts, solved in floating point (the same script)', () => {
  expect(stored.networks).toHaveLength(40);
  for (const { shafts, stages, ratios } of stored.networks) {
    const elements: Record<string, TypedElement> = {};
    for (const [index, { sun, planet, ring, roles }] of stages.entries()) {
      elements[`stage${index}`] = {
        kind: 'planetary-stage',
        sun: roles[0],
        carrier: roles[1],
        ring: roles[2],
        'sun-teeth': sun,
        'planet-teeth': planet,
        'ring-teeth': ring,
        planets: 1,
      };
    }
    const speeds = shaftSpeeds(
      readTrain({ of: 'G', shafts, elements, operation: { shaft: shafts[0], speed: '10 Hz' } }),
    );
    for (const [index, shaft] of shafts.entries()) {
      const found = speeds.shafts[shaft]!;
      if (!found.known) throw new Error(`${shaft}: ${JSON.stringify(found.missing)}`);
      expect(Math.abs(toNumber(found.value.ratio) / ratios[index] - 1)).toBeLessThan(1e-8);
    }
    expect(speeds.disagreements).toEqual([]);
  }
});

const hertz = (table: ReturnType<typeof frequencyTable>, name: string) => {
  const cell = table.rows.find((row) => row.line.name === name)?.cells[0]?.frequency;
  if (cell?.known !== true) throw new Error(`${name}: ${JSON.stringify(cell)}`);
  return cell.value;
};

const gear = (from: string, to: string, driving: number, driven: number): TypedElement => ({
  kind: 'gear-pair',
  from,
  to,
  'driving-teeth': driving,
  'driven-teeth': driven,
});

const stage = (sun: string, carrier: string, counts: readonly [number, number, number]): TypedElement => ({
  kind: 'planetary-stage',
  sun,
  carrier,
  ring: 'fixed',
  'sun-teeth': counts[0],
  'planet-teeth': counts[1],
  'ring-teeth': counts[2],
  planets: 3,
});

test('printed: the test gearbox of NREL/TP-5000-51885 as a train (from memory; meshes computed here from its teeth)', () => {
  const table = frequencyTable(
    readTrain({
      of: 'G-750',
      shafts: ['rotor', 'sun', 'middle', 'fast'],
      elements: {
        stage: stage('sun', 'rotor', [21, 39, 99]),
        second: gear('sun', 'middle', 82, 23),
        third: gear('middle', 'fast', 88, 22),
      },
      operation: { shaft: 'rotor', speed: '22.09 r/min' },
    }),
  );
  expect(hertz(table, 'stage/mesh')).toBeCloseTo(36.4485, 4);
  expect(hertz(table, 'second/mesh')).toBeCloseTo(172.51, 2);
  expect(hertz(table, 'third/mesh')).toBeCloseTo(660.05, 2);
  expect(60 * hertz(table, 'fast/1x')).toBeCloseTo(1800.13, 2);
  expect(hertz(table, 'fast/1x') / hertz(table, 'rotor/1x')).toBeCloseTo(81.49, 2);
});

test('printed: the helicopter gearbox of NASA reports as a train (from memory; meshes computed here from its teeth)', () => {
  const typed = {
    of: 'H-1',
    shafts: ['input', 'sun', 'rotor'],
    elements: {
      bevel: { ...gear('input', 'sun', 19, 71), meshing: 'bevel' } as TypedElement,
      stage: stage('sun', 'rotor', [27, 35, 99]),
    },
    operation: { shaft: 'input', speed: '6060 r/min' },
  };
  const table = frequencyTable(readTrain(typed));
  expect(hertz(table, 'bevel/mesh')).toBeCloseTo(1919, 1);
  expect(hertz(table, 'stage/mesh')).toBeCloseTo(573.38, 2);
  expect(60 * hertz(table, 'rotor/1x')).toBeCloseTo(347.5, 1);
  // 27 + 2·35 = 97 and not 99: it turns by profile shift, so a count that does not fit is asked about and not impossible.
  expect(trainFindings(readTrain(typed)).map((each) => each.rule)).toContain('machine/planetary-geometry');
});

const planetBearing = {
  kind: 'rolling-bearing',
  inner: 'rotor',
  outer: 'planet',
  elements: 17,
  'element-diameter': '42 mm',
  'pitch-diameter': '230 mm',
  'contact-angle': '0 deg',
  load: 'turns with the inner ring',
};

function withPlanetBearing(bearing: Record<string, unknown>) {
  const train = planetaryTrain({ planet: 'planet' });
  return {
    ...train,
    shafts: [...train.shafts, 'planet'],
    elements: { ...train.elements, 'planet-bearing': bearing as TypedElement },
  };
}

test('a planet bearing turns with the planet against its pin; taking the carrier is wrong by 2.5, the fast shaft by 38 (reference plant, wind turbine)', () => {
  const table = frequencyTable(readTrain(withPlanetBearing(planetBearing)));
  expect(hertz(table, 'planet-bearing/outer-ring')).toBeCloseTo(2.4985, 4);
  expect(hertz(table, 'planet-bearing/inner-ring')).toBeCloseTo(3.6149, 4);
  const onCarrier = frequencyTable(
    readTrain(withPlanetBearing({ ...planetBearing, outer: 'fixed', load: 'stands still' })),
  );
  expect(hertz(table, 'planet-bearing/outer-ring') / hertz(onCarrier, 'planet-bearing/outer-ring')).toBeCloseTo(
    2.54,
    2,
  );
  const fast = 1456 / 15;
  expect(
    (hertz(onCarrier, 'planet-bearing/outer-ring') * fast) / hertz(table, 'planet-bearing/outer-ring'),
  ).toBeCloseTo(38, 0);
});

test('law: the cage against a planet is passages over elements, and both cages together are the turns between the rings', () => {
  const table = frequencyTable(readTrain(withPlanetBearing(planetBearing)));
  expect(hertz(table, 'planet-bearing/cage-from-outer') * 17).toBeCloseTo(
    hertz(table, 'planet-bearing/outer-ring'),
    12,
  );
  expect(hertz(table, 'planet-bearing/cage-from-inner') * 17).toBeCloseTo(
    hertz(table, 'planet-bearing/inner-ring'),
    12,
  );
  const both = hertz(table, 'planet-bearing/cage-from-outer') + hertz(table, 'planet-bearing/cage-from-inner');
  expect(both).toBeCloseTo(hertz(table, 'stage/planet-spin'), 12);
});

test('the planet, the moving ring, has the side lines and the pin has none; a load that is not stated is asked for', () => {
  const names = frequencyTable(readTrain(withPlanetBearing(planetBearing))).rows.map((row) => row.line.name);
  expect(names).toContain('planet-bearing/outer-ring-lower');
  expect(names).not.toContain('planet-bearing/inner-ring-lower');
  const { load: _load, ...unsaid } = planetBearing;
  const asked = trainFindings(readTrain(withPlanetBearing(unsaid)));
  expect(asked.map((each) => each.rule)).toEqual(['machine/load-of-bearing']);
  expect(showMeasure(asked[0]!.found ?? '')).toContain('planet pin of stage');
});

test('a planet shaft makes no orders against the housing, but has a speed', () => {
  const table = frequencyTable(readTrain(withPlanetBearing(planetBearing)));
  expect(table.rows.some((row) => row.line.name.startsWith('planet/'))).toBe(false);
  // (1 + z_s/z_p)·f_c − z_s/z_p·f_s = 20/13 − 40/13 of the carrier.
  expect(table.shafts.find(({ shaft }) => shaft === 'planet')!.ratio).toEqual({ known: true, value: '-20/13' });
});

test('a mesh out of phase is given where it stands out at the ring, one in phase is not given twice', () => {
  const lines = (planet: number, ring: number) =>
    frequencyTable(readTrain(planetaryTrain({ 'planet-teeth': planet, 'ring-teeth': ring })))
      .rows.filter(({ line }) => line.name.includes('at-ring'))
      .map(({ line, form }) => `${line.name}: ${form}`);
  expect(lines(39, 99)).toEqual([]);
  // 100 is 1 above 99, 200 is 1 below 201, 300 is a multiple of 3.
  expect(lines(39, 100)).toEqual([
    'stage/mesh-at-ring-lower: 99 × rotor',
    'stage/2-times-mesh-at-ring-upper: 201 × rotor',
  ]);
});

const first = (typed: Parameters<typeof readTrain>[0], rule: string) =>
  trainFindings(readTrain(typed)).find((each) => each.rule === rule);

test('bad input: a planet of 38 teeth, 21 + 2·38 = 97 and not 99, blocks the issue and asks; profile shift answers it', () => {
  const found = first(planetaryTrain({ 'planet-teeth': 38 }), 'machine/planetary-geometry')!;
  expect(found.weight).toBe('blocks-issue');
  expect(showMeasure(found.found ?? '')).toBe('21 + 2·38 = 97 teeth, and a ring of 99');
  expect(showMeasure(found.remedy[0] ?? '')).toContain('39 teeth would fit');
  expect(showMeasure(found.asks ?? '')).toContain('profile shift');
  // The helicopter gearbox of 27, 35 and 99 teeth is such a case: it turns, with profile shift.
  const helicopter = { 'sun-teeth': 27, 'planet-teeth': 35, 'profile-shift': 'yes' };
  expect(first(planetaryTrain(helicopter), 'machine/planetary-geometry')).toBeUndefined();
  expect(
    first(planetaryTrain({ 'planet-teeth': 29, 'profile-shift': 'yes' }), 'machine/planetary-geometry'),
  ).toBeDefined();
});

test('bad input: planets that cannot assemble at equal angles are asked about, with the counts that would', () => {
  const found = first(planetaryTrain({ planets: 7 }), 'machine/planets-assemble')!;
  expect(showMeasure(found.found ?? '')).toBe('(21 + 99)/7 = 120/7');
  expect(found.remedy).toContain('3, 4, 5, 6 planets would go in');
  expect(first(planetaryTrain({ planets: 7, spacing: 'unequal' }), 'machine/planets-assemble')).toBeUndefined();
});

test('bad input: a ring taken as held where the carrier is, or carrier and sun exchanged, contradicts the stated ratio', () => {
  const wrong = first(planetaryTrain({ ratio: 4.714 }), 'machine/planetary-ratio')!;
  expect(showMeasure(wrong.asks ?? '')).toBe('Is the carrier held, and not the ring?');
  expect(showFraction(ratioWithHeld({ sun: 21, ring: 99 }, 'ring'))).toBe('40/7');
  const exchanged = planetaryTrain({ sun: 'rotor', carrier: 'sun' });
  const plates = { ...exchanged, plates: { sun: '70 r/min' } };
  const asked = trainFindings(readTrain(plates));
  expect(asked.map((each) => each.rule)).toContain('machine/plate-against-train');
  expect(showMeasure(asked.find((each) => each.rule === 'machine/planetary-exchanged')!.asks ?? '')).toBe(
    'Are sun and carrier exchanged?',
  );
});
