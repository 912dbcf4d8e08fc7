import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { showMeasure } from '../../packages/core/src/finding/measure.ts';
import {
  appraisal,
  assemblyShare,
  type ChainParts,
  calculate,
  coincidences,
  type Design,
  type DesignedPoint,
  design,
  frequencyAtState,
  magnitudeOf,
  planetWindow,
  slewLimit,
  visibility,
  workingCalled,
} from '../../packages/core/src/index.ts';
import { type AnswersById, examplePlant, heldAgainstReference, known, plantOf, root } from '../reading.ts';

const designed: Design = design(examplePlant('wind-turbine'), 1);
const machine = designed.machines[0]!;
const [nacelle, mainBearing, ringGear, fastShaft] = machine.points as readonly [
  DesignedPoint,
  DesignedPoint,
  DesignedPoint,
  DesignedPoint,
];
const { catalogue, policy } = designed.plant;
const gravity = 9.80665;

const part = <S extends 'transducers' | 'mounts' | 'inputs'>(shelf: S, name: string) =>
  (catalogue[shelf] as readonly { name: string }[]).find((each) => each.name === name) as (typeof catalogue)[S][number];

function appraised(point: DesignedPoint, change: Partial<ChainParts>) {
  return appraisal(point.point, { ...point.stated.way!, ...point.stated.chosen!, ...change }, policy);
}

/** A sensor that reads down to zero stands on the direct-coupled channel; every other one on the usual input. */
const withPart = (point: DesignedPoint, name: string) =>
  appraised(point, {
    transducer: part('transducers', name),
    input: part('inputs', name === 'DCA-2' ? 'ONL-DC' : 'ONL-24'),
  });

const points: Readonly<Record<string, DesignedPoint>> = {
  NACELLE: nacelle,
  MAIN: mainBearing,
  PLANET: ringGear,
  HSS: fastShaft,
};

/** His cage of the planet bearing is that seen from the outer ring, the planet: passages of it over seventeen. */
const lines: Readonly<Record<string, string>> = {
  rotor: 'rotor/1x',
  blade_3P: 'blades/vane-pass',
  sun_LSS: 'sun/1x',
  IMS: 'intermediate/1x',
  HSS: 'fast/1x',
  planet_GMF: 'planetary/mesh',
  planet_rel: 'planetary/planet-spin',
  sun_fault: 'planetary/sun-fault',
  ring_fault: 'planetary/ring-fault',
  planet_fault_one_flank: 'planetary/planet-fault-one-flank',
  planet_fault_both: 'planetary/planet-fault',
  GMF2: 'second-stage/mesh',
  GMF3: 'third-stage/mesh',
  main_BPFO: 'main-bearing/outer-ring',
  main_BPFI: 'main-bearing/inner-ring',
  main_FTF: 'main-bearing/cage',
  planet_brg_BPFO: 'planet-bearing/outer-ring',
  planet_brg_BPFI: 'planet-bearing/inner-ring',
  planet_brg_FTF: 'planet-bearing/cage-from-outer',
  HSS_BPFO: 'fast-bearing/outer-ring',
  HSS_BPFI: 'fast-bearing/inner-ring',
  gen_BPFO: 'generator-bearing/outer-ring',
  gen_BPFI: 'generator-bearing/inner-ring',
};

const line = (name: string, rpm: string) =>
  known(frequencyAtState(machine.frequencies, name, rpm === '8.5' ? 'lowest' : 'highest'));
const verdict = (outcome: string) =>
  outcome === 'meets' || outcome === 'warns' ? 'PASS' : outcome === 'fails' ? 'FAIL' : 'ASK';
const fastRatio = () => known(machine.frequencies.shafts.find(({ shaft }) => shaft === 'fast')!.ratio);
const noise = (point: DesignedPoint, name: string, target: number) =>
  known(visibility(point.point.targets[target]!, withPart(point, name).prediction)).noise.value;
const set = (point: DesignedPoint, name: string) => point.settings.sets.find((each) => each.name === name)!;
const tilt = () => {
  const { results } = calculate(workingCalled('tilt-gravity'), {
    angle: '1 deg',
    frequency: '0.31 Hz',
    height: '90 m',
  });
  return (name: string) => (results.find((each) => each.name === name)!.json as { value: number }).value;
};
const teeth = { sun: 21, planet: 39, ring: 99, planets: 3 };
const turns = () => set(ringGear, 'planetary-turns').orders!;

/** Our answer to each expected id, by the shape of the id. */
const answers: AnswersById = [
  [/^S10\.freq\.(8\.5|15\.5)rpm\.HSS_rpm$/, ([, rpm]) => 60 * line('fast/1x', rpm!)],
  [/^S10\.freq\.(8\.5|15\.5)rpm\.(\w+)$/, ([, rpm, name]) => line(lines[name!]!, rpm!)],
  [/^S10\.ratio\.exact$/, () => fastRatio()],
  [
    /^S10\.ratio\.value$/,
    () =>
      fastRatio()
        .split('/')
        .map(Number)
        .reduce((over, under) => over / under),
  ],
  [/^S10\.planet\.tooth_window_carrier_turns$/, () => planetWindow(teeth)],
  [/^S10\.planet\.assembly_integer$/, () => Number(assemblyShare(teeth).numerator)],
  [
    /^S10\.(NACELLE|MAIN|PLANET|HSS)\.verdict\.(.+)@stud$/,
    ([, point, name]) => verdict(withPart(points[point!]!, name!).outcome),
  ],
  [/^S10\.NACELLE\.noise_DCA2$/, () => (1e6 * noise(nacelle, 'DCA-2', 0)) / gravity],
  [
    /^S10\.NACELLE\.err_ACC500_rotor$/,
    () => 100 * (magnitudeOf(known(withPart(nacelle, 'ACC-500').prediction.response)(line('rotor/1x', '8.5'))) - 1),
  ],
  [/^S10\.NACELLE\.tilt_contamination_pct$/, () => 100 * tilt()('contamination')],
  [/^S10\.NACELLE\.tilt_1deg_g$/, () => tilt()('standing') / gravity],
  [/^S10\.chain\.(ACC-\d+)_line_noise_at_main_BPFO/, ([, name]) => (1e6 * noise(mainBearing, name!, 1)) / gravity],
  [/^S10\.chain\.(ACC-\d+)_noise_500-4000_Hz$/, ([, name]) => (1e6 * noise(mainBearing, name!, 0)) / gravity],
  [/^S10\.chain\.ACC-100_velocity_noise_10-1000_Hz$/, () => 1000 * noise(fastShaft, 'ACC-100', 2)],
  [
    /^S10\.chain\.slew,_ACC-100_full_swing_8_V,_25_m$/,
    () => {
      const { drive, bias } = fastShaft.appraisal!.prediction;
      const { capacitance, current } = known(drive);
      return slewLimit(capacitance, current, 0, known(bias).swing.bottom);
    },
  ],
  [/^S10\.acq\.fixed\.df$/, () => set(ringGear, 'planetary-mesh').resolution],
  [/^S10\.acq\.smear_Hz$/, () => set(ringGear, 'planetary-mesh').smear!.hertz],
  [/^S10\.acq\.smear_lines$/, () => set(ringGear, 'planetary-mesh').smear!.lines],
  [/^S10\.acq\.order\.T_30_carrier_turns$/, () => set(ringGear, 'planetary-turns').recordLength],
  [/^S10\.acq\.order\.hss_turns$/, () => turns().by!.turns],
  [/^S10\.acq\.order\.T_slow$/, () => turns().longest!],
  [/^S10\.acq\.order\.rounded_ratio_drift_deg$/, () => turns().by!.rounded.drift],
  [/^S10\.acq\.main_env\.Fmax$/, () => set(mainBearing, 'envelope-spectrum').highestFrequency],
  [/^S10\.acq\.main_env\.lines$/, () => set(mainBearing, 'envelope-spectrum').lines],
  [/^S10\.acq\.main_env\.df$/, () => set(mainBearing, 'envelope-spectrum').resolution],
  [/^S10\.acq\.main_env\.T$/, () => set(mainBearing, 'envelope-spectrum').recordLength],
];

heldAgainstReference('wind-turbine', 'S10', answers);

test('the chosen chains are proven against their targets: nothing blocks and nothing is asked', () => {
  expect(designed.findings.filter(({ weight }) => weight === 'blocks-issue' || weight === 'question')).toEqual([]);
  expect(ringGear.settings.unknown).toEqual([]);
});

const file = readFileSync(resolve(root, 'examples/wind-turbine/plant.yaml'), 'utf8');
const changed = (...edits: readonly (readonly [string, string])[]) => {
  let text = file;
  for (const [before, after] of edits) {
    if (!text.includes(before)) throw new Error(`the plant file holds no '${before}'`);
    text = text.replace(before, after);
  }
  return design(plantOf(text), 1);
};
const rules = (found: Design, weight = 'notes') =>
  found.findings.filter((each) => each.weight !== weight).map(({ rule }) => rule);
const speaking = (found: Design, rule: string) => found.findings.find((each) => each.rule === rule);

test('bad input: planet teeth 38, 21 + 2·38 = 97 and not 99, are refused until somebody answers', () => {
  const wrong = changed(['planet-teeth: { value: 39,', 'planet-teeth: { value: 38,']);
  expect(speaking(wrong, 'machine/planetary-geometry')).toMatchObject({ weight: 'blocks-issue' });
  expect(speaking(wrong, 'machine/planetary-geometry')!.asks).toContain('Which count is wrong');
  expect(wrong.verdict).toBe('not proven');
});

test('bad input: carrier and sun exchanged gives speeds that the generator plate contradicts', () => {
  const wrong = changed(['sun: sun\n        carrier: rotor', 'sun: rotor\n        carrier: sun']);
  expect(speaking(wrong, 'machine/planetary-exchanged')!.asks).toBe('Are sun and carrier exchanged?');
});

test('bad input: the ring is taken as fixed where the carrier is; the ratio says which it must be', () => {
  const wrong = changed(
    [
      'carrier: rotor\n        ring: fixed\n        planet: planet',
      'carrier: fixed\n        ring: rotor\n        planet: planet',
    ],
    ['ratio: { value: 5.714', 'ratio: { value: 5.714'],
  );
  expect(speaking(wrong, 'machine/planetary-ratio')!.asks).toBe('Is the ring held, and not the carrier?');
});

test('bad input: the stage pair 98/24 entered 24/98', () => {
  const wrong = changed(
    ['driving-teeth: { value: 98,', 'driving-teeth: { value: 24,'],
    ['driven-teeth: { value: 24,', 'driven-teeth: { value: 98,'],
  );
  expect(rules(wrong)).toContain('machine/plate-against-train');
});

test('bad input: the rollers of both rows of the main bearing counted together', () => {
  const wrong = changed(['elements: { value: 28,', 'elements: { value: 56,']);
  expect(speaking(wrong, 'machine/rows-counted-twice')!.asks).toContain('count of all 2 rows');
});

test('bad input: the planet bearing put on the carrier, or without what its load does', () => {
  const onCarrier = changed(['inner: rotor\n        outer: planet', 'on: rotor']);
  // Its lines are then wrong by 2.5, which no plate can tell; what the load does contradicts its place no more.
  const wrong = known(frequencyAtState(onCarrier.machines[0]!.frequencies, 'planet-bearing/outer-ring', 'lowest'));
  expect(line('planet-bearing/outer-ring', '8.5') / wrong).toBeCloseTo(2.54, 2);
  const unsaid = changed(['        load: turns with the inner ring\n', '']);
  expect(speaking(unsaid, 'machine/load-of-bearing')!.asks).toContain('inner ring');
});

test('bad input: a mean speed of ten minutes in place of that of the record hides how far it strays', () => {
  const calm = changed([
    '      wander: { value: 1 %, status: measured, source: turbine controller ±0.5 % within 16 s }\n',
    '',
  ]);
  const sets = calm.machines[0]!.points[2]!.settings.sets;
  expect(sets.find(({ name }) => name === 'planetary-mesh')).not.toHaveProperty('smear');
  expect(
    set(ringGear, 'planetary-mesh')
      .reasons.map((each) => showMeasure(each))
      .join(),
  ).toContain('only a record counted in turns');
});

test('the mesh of the planetary stage is in phase: it stands out itself, and no other order is given for it', () => {
  expect(machine.frequencies.rows.some(({ line: each }) => each.name.includes('at-ring'))).toBe(false);
  expect(coincidences(machine.stated.train).some(({ a }) => a.line.name.startsWith('planet/'))).toBe(false);
});
