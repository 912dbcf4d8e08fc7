import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import {
  appraisal,
  asMotion,
  type ChainParts,
  cableCorner,
  type Design,
  type DesignedPoint,
  design,
  frequencyAtState,
  level,
  type Measure,
  runoutAllowance,
  shaftAcceptance,
  shaftLimits,
  slewLimit,
  slowRollAccepted,
} from '../../packages/core/src/index.ts';
import { type AnswersById, examplePlant, heldAgainstReference, known, plantOf, root } from '../reading.ts';

const file = readFileSync(resolve(root, 'examples/turbo-compressor/plant.yaml'), 'utf8');

const designed: Design = design(examplePlant('turbo-compressor'), 1);
const machine = designed.machines[0]!;
const [journal, thrust, mark, casing] = machine.points as [DesignedPoint, DesignedPoint, DesignedPoint, DesignedPoint];
const { catalogue, policy } = designed.plant;

const part = <S extends 'transducers' | 'mounts' | 'inputs'>(shelf: S, name: string) =>
  (catalogue[shelf] as readonly { name: string }[]).find((each) => each.name === name) as (typeof catalogue)[S][number];

function appraised(point: DesignedPoint, change: Partial<ChainParts>) {
  return appraisal(point.point, { ...point.stated.way!, ...point.stated.chosen!, ...change }, policy);
}

const line = (name: string, state: string) => known(frequencyAtState(machine.frequencies, name, state));
const between = (name: string) =>
  machine.frequencies.rows.find((row) => row.line.name === name)!.cells.find((cell) => cell.state === 'highest')!
    .between!;

const frequencies: Readonly<Record<string, () => number>> = {
  one_x: () => line('rotor/1x', 'highest'),
  two_x: () => line('rotor/2x', 'highest'),
  whirl_low: () => between('journal-1/whirl').low,
  whirl_high: () => between('journal-1/whirl').high,
  min_1x: () => line('rotor/1x', 'lowest'),
  critical: () => line('first-critical/critical', 'highest'),
  BPF: () => line('wheel/vane-pass', 'highest'),
  BPF2: () => 2 * line('wheel/vane-pass', 'highest'),
  vane_pass: () => line('wheel/diffuser-vane-pass', 'highest'),
  blade_vane_lcm_order: () => line('wheel/vane-diffuser', 'highest') / line('rotor/1x', 'highest'),
};

const verdict = (outcome: string) =>
  outcome === 'meets' || outcome === 'warns' ? 'PASS' : outcome === 'fails' ? 'FAIL' : 'ASK';
/** The reference plant screens probes on the rack and the others on the constant-current system. */
const onRack = new Set(['PRX-8', 'PRX-25', 'LVD-25']);
const input = (name: string) => part('inputs', onRack.has(name) ? 'RACK-DC' : 'ONL-24');
const screened = (point: DesignedPoint, name: string, mount: string) =>
  verdict(
    appraised(point, { transducer: part('transducers', name), mount: part('mounts', mount), input: input(name) })
      .outcome,
  );

const micrometres = 1e6;
const boundary = (name: 'ab' | 'bc' | 'cd') => known(journal.limits!.boundaries)[name].value * micrometres;
const free = (name: 'bc' | 'cd') => shaftLimits(line('rotor/1x', 'highest'))[name].value * micrometres;
const setPoint = (name: 'alert' | 'alertCap' | 'trip' | 'tripCap') =>
  known(journal.alarms!.setPoints[name]).value * micrometres;
const atOutput = (name: string) =>
  1000 * known(journal.alarms!.register.find((row) => row.name === name)!.voltage).value;

function measureOf(point: DesignedPoint, name: string): number {
  const rows = point.probes!.arrangements.flatMap((each) => each.rows);
  const measure: Measure = known(rows.find((row) => row.name === name)!.value);
  if (measure.is === 'quantity') return measure.value;
  if (measure.is === 'level') return measure.level.value;
  throw new Error(`${name} is no number`);
}

const slowRoll = journal.probes!.arrangements.find((each) => each.stated.kind === 'slow-roll')!;
const set = (name: string) => journal.settings.sets.find((each) => each.name === name)!;
const gravity = 9.80665;

/** Our answer to each expected id, by the shape of the id. */
const answers: AnswersById = [
  [/^S04\.freq\.(\w+)$/, ([, name]) => frequencies[name!]!()],
  [/^S04\.JOURNAL\.verdict\.(.+)@(.+)$/, ([, name, mount]) => screened(journal, name!, mount!)],
  [/^S04\.CASING\.verdict\.(.+)@(.+)$/, ([, name, mount]) => screened(casing, name!, mount!)],
  [
    /^S04\.bladepass_10g_as_um_pk$/,
    () =>
      micrometres *
      asMotion(level('acceleration', 10 * gravity, 'peak'), 'displacement', line('wheel/vane-pass', 'highest')).value,
  ],
  [
    /^S04\.casing\.slew_15g_rms$/,
    () => {
      const { drive, chain } = casing.appraisal!.prediction;
      const { current, capacitance } = known(drive);
      return slewLimit(capacitance, current, 0, 15 * Math.SQRT2 * gravity * known(chain.transducer.sensitivity));
    },
  ],
  [/^S04\.limit\.(AB|BC|CD)$/, ([, name]) => boundary(name!.toLowerCase() as 'ab')],
  [/^S04\.limit\.(BC|CD)_raw$/, ([, name]) => free(name!.toLowerCase() as 'bc')],
  [/^S04\.limit\.api_accept$/, () => shaftAcceptance(line('rotor/1x', 'highest')).value * micrometres],
  [/^S04\.limit\.runout_max$/, () => runoutAllowance(shaftAcceptance(line('rotor/1x', 'highest'))).value * micrometres],
  [/^S04\.limit\.(alert|trip)$/, ([, name]) => setPoint(name as 'alert')],
  [/^S04\.limit\.(alert|trip)_cap$/, ([, name]) => setPoint(`${name}Cap` as 'alertCap')],
  [/^S04\.gap\.mm_at_minus10V$/, () => 1000 * measureOf(journal, 'gap')],
  [/^S04\.gap\.rest_to_centre_dV$/, () => measureOf(journal, 'shift-x-voltage')],
  [/^S04\.(alert)_mV_pp$/, () => atOutput('alert')],
  [/^S04\.danger_mV_pp$/, () => atOutput('trip')],
  [
    /^S04\.thrust\.(end_of_float|alarm|trip)\.V_(toward|away)$/,
    ([, name, way]) => measureOf(thrust, `${name!.replaceAll('_', '-')}-${way}`),
  ],
  [/^S04\.field\.f_rc$/, () => cableCorner(50, known(journal.appraisal!.prediction.chain.cable.capacitance))],
  [
    /^S04\.field\.slew_250um$/,
    () => {
      const { chain, drive } = journal.appraisal!.prediction;
      const { current, capacitance } = known(drive);
      return slewLimit(capacitance, current, 0, 125e-6 * known(chain.transducer.sensitivity));
    },
  ],
  [/^S04\.phase\.pulse_us$/, () => micrometres * measureOf(mark, 'pulse')],
  [/^S04\.slowroll\.comp_um_pp$/, () => micrometres * measureOf(journal, 'compensated')],
  [/^S04\.slowroll\.comp_deg$/, () => (180 / Math.PI) * measureOf(journal, 'compensated-phase')],
  [/^S04\.slowroll\.ok$/, () => known(slowRollAccepted(slowRoll.stated.sheet as never, journal.probes!.around))],
  [
    /^S04\.uncertainty\.U$/,
    () =>
      100 *
      known(journal.budgets.find((each) => each.target === '1x shaft vibration' && each.entered === 'nominal')!.budget)
        .expandedUncertainty,
  ],
  [/^S04\.acq\.steady\.Fmax$/, () => set('steady-shaft').highestFrequency],
  [/^S04\.acq\.steady\.lines$/, () => set('steady-shaft').lines],
  [/^S04\.acq\.steady\.df$/, () => set('steady-shaft').resolution],
  [/^S04\.acq\.steady\.T$/, () => set('steady-shaft').recordLength],
  [/^S04\.acq\.sync\.fs$/, () => set('synchronous').samplingRate],
  [/^S04\.acq\.sync\.T_64rev$/, () => set('synchronous').recordLength],
  [/^S04\.acq\.runup\.rpm_change_in_record$/, () => 60 * set('synchronous').orders!.speedChange!],
];

heldAgainstReference('turbo-compressor', 'S04', answers);

/** The findings of the plant with some of its file written otherwise: gravest first, by rule, place and weight. */
function written(...changes: readonly (readonly [was: string, is: string])[]): readonly string[] {
  const text = changes.reduce((sofar, [was, is]) => {
    if (!sofar.includes(was)) throw new Error(`the plant file does not say '${was}'`);
    return sofar.replaceAll(was, is);
  }, file);
  return design(plantOf(text), 1).findings.map(({ rule, at, weight }) => `${rule} ${at.split('/')[1]} ${weight}`);
}

test('negative: as it stands the plant asks who owns the trip vote and how fast it must be, and blocks nothing', () => {
  const found = written();
  expect(found.filter((each) => each.endsWith('blocks-issue'))).toEqual([]);
  expect(found).toContain('alarm/vote bearing-1 question');
  expect(found).toContain('alarm/response-time bearing-1 question');
  expect(designed.findings.find(({ rule }) => rule === 'alarm/vote')!.asks).toMatch(/the owner of the trip/);
  expect(found).toContain('design/nominal-sensitivity bearing-1 warns');
});

test('negative: the radial clearance entered for the diametral one is asked about, and B/C falls to 49.5 µm', () => {
  const was = 'clearance: { value: 0.165 mm';
  const text = file.replace(was, 'clearance: { value: 0.0825 mm');
  expect(written([was, 'clearance: { value: 0.0825 mm'])).toContain('zones/clearance-radial bearing-1 question');
  const halved = design(plantOf(text), 1).machines[0]!.points[0]!;
  expect(known(halved.limits!.boundaries).bc.value * micrometres).toBeCloseTo(49.5, 9);
  const none = design(plantOf(file.replace(/clearance: \{ value: 0\.165 mm[^}]*\}/, 'clearance: unknown')), 1);
  const open = none.machines[0]!.points[0]!;
  expect(open.limits!.boundaries.known).toBe(false);
  expect(open.alarms!.setPoints.trip.known).toBe(false);
  expect(none.findings.some(({ rule }) => rule === 'zones/clearance-not-stated')).toBe(true);
});

test('negative: a slow roll at 2500 r/min is refused by both limits, the critical one of the train', () => {
  const found = written(['speed: { value: 500 r/min', 'speed: { value: 2500 r/min']);
  expect(found.filter((each) => each === 'proximity/slow-roll-too-fast bearing-1 blocks-issue')).toHaveLength(2);
});

test('negative: a thrust float of 0.35 inch is asked about, and its trips lie outside the range of the set', () => {
  const found = written(['float: { value: 0.35 mm', 'float: { value: 0.35 in']);
  expect(found).toContain('proximity/float-unusual thrust question');
  expect(found).toContain('proximity/thrust-outside-range thrust blocks-issue');
});

test('negative: an unknown probe angle is asked, and leaves the rest position in volts unknown', () => {
  const text = file.replace(/angle-x: \{[^}]*\}/, 'angle-x: unknown');
  const open = design(plantOf(text), 1);
  expect(open.findings.map(({ rule }) => rule)).toContain('proximity/not-stated');
  const rows = open.machines[0]!.points[0]!.probes!.arrangements[0]!.rows;
  expect(rows.find((row) => row.name === 'shift-x-voltage')!.value.known).toBe(false);
  expect(rows.find((row) => row.name === 'shift-y-voltage')!.value.known).toBe(true);
});

test('negative: a baseline copied from the sister machine, X and Y exchanged, an unknown steel', () => {
  expect(written(['source: first month at 11 400 r/min', 'source: copied from sister machine K-12'])).toContain(
    'alarm/own-baseline bearing-1 question',
  );
  expect(
    written(['angle-x: { value: 45', 'angle-x: { value: -45'], ['angle-y: { value: -45', 'angle-y: { value: 45']),
  ).toContain('proximity/pair-exchanged bearing-1 question');
  expect(written(['shaft-material: { value: 4140 steel', 'shaft-material: { value: 316 stainless'])).not.toEqual(
    written(),
  );
});

test('negative: in Zone 2 nothing is proven before the sheet of the area and the certificates are there', () => {
  const lines = file.split('\n').map((each) => each.replace(/^ {4}# (area:$| {2}(zone|group|ambient):)/, '    $1'));
  expect(lines.join('\n')).not.toBe(file);
  const open = design(plantOf(lines.join('\n')), 1);
  expect(open.verdict).toBe('not proven');
  const asked = open.findings.filter(({ rule }) => rule.startsWith('area/'));
  expect(asked.length).toBeGreaterThan(0);
});

test('negative: clearance beside limits of an owner, and a shaft that is not in the train, are refused with their place', () => {
  const owners = 'a-b: 3 mm/s rms\n          b-c: 5 mm/s rms\n          c-d: 8 mm/s rms\n          source: owner';
  expect(() => plantOf(file.replace('table: iso-7919-3-shaft', owners))).toThrow(/clearance/);
  expect(() =>
    plantOf(
      file.replace('        probes:\n          pair:', '        shaft: pinion\n        probes:\n          pair:'),
    ),
  ).toThrow(/a shaft of the train: rotor/);
});
