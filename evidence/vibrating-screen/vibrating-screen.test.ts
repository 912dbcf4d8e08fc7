import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { showMeasure } from '../../packages/core/src/finding/measure.ts';
import {
  appraisal,
  asAcceleration,
  asMotion,
  asSineDetector,
  type ChainParts,
  type Design,
  type DesignedPoint,
  design,
  frequencyAtState,
  type Level,
  magnitudeOf,
  phaseSkew,
  rangeNeeded,
  readingUncertainty,
  si,
  slewLimit,
  stated,
  visibility,
} from '../../packages/core/src/index.ts';
import { type AnswersById, examplePlant, heldAgainstReference, known, plantOf, root } from '../reading.ts';

const designed: Design = design(examplePlant('vibrating-screen'), 1);
const machine = designed.machines[0]!;
const [exciter] = machine.points as readonly [DesignedPoint];
const { catalogue, policy, allowances } = designed.plant;
const gravity = 9.80665;

const part = <S extends 'transducers' | 'mounts' | 'inputs'>(shelf: S, name: string) =>
  (catalogue[shelf] as readonly { name: string }[]).find((each) => each.name === name) as (typeof catalogue)[S][number];

function appraised(change: Partial<ChainParts>) {
  return appraisal(exciter.point, { ...exciter.stated.way!, ...exciter.stated.chosen!, ...change }, policy);
}

const line = (name: string) => known(frequencyAtState(machine.frequencies, name, 'highest'));
const verdict = (outcome: string) =>
  outcome === 'meets' || outcome === 'warns' ? 'PASS' : outcome === 'fails' ? 'FAIL' : 'ASK';
const chosen = () => exciter.appraisal!.prediction;
const error = (hertz: number) => 100 * (magnitudeOf(known(chosen().response)(hertz)) - 1);
const stroke = (): Level<'displacement'> => {
  const { alertLow, alertHigh } = known(exciter.window!.window);
  return { ...alertLow, value: (alertLow.value + alertHigh.value) / 2 };
};
const range = () => known(rangeNeeded(exciter.point, chosen(), policy));
const set = (name: string) => exciter.settings.sets.find((each) => each.name === name)!;
const inG = (level: Level<'acceleration'>) => level.value / gravity;

/** Expanded uncertainty of the stroke, in per cent, with the individual calibration and some allowances otherwise. */
function expanded(changed: Partial<(typeof allowances)['values']>): number {
  const sheet = { ...allowances, values: { ...allowances.values, ...changed } };
  return (
    100 *
    known(readingUncertainty(exciter.point.targets[0]!, exciter.point, chosen(), sheet, 'individual'))
      .expandedUncertainty
  );
}
const fraction = (value: number) => stated(si('fraction', value));

const lines: Readonly<Record<string, string>> = {
  '1x': 'exciter/1x',
  '2x': 'exciter/2x',
  '3x': 'exciter/looseness',
  FTF: 'exciter-bearing/cage',
  BSF: 'exciter-bearing/element-spin',
  BPFO: 'exciter-bearing/outer-ring',
  BPFI: 'exciter-bearing/inner-ring',
};
const sets: Readonly<Record<string, string>> = { stroke: 'motion-path', env: 'envelope-spectrum' };

/** Our answer to each expected id, by the shape of the id. */
const answers: AnswersById = [
  [/^S05\.freq\.(\w+)$/, ([, name]) => line(lines[name!]!)],
  [/^S05\.motion\.acc_g_pk$/, () => inG(asAcceleration(stroke(), line('exciter/stroke')))],
  [
    /^S05\.motion\.vel_mm_s_(rms|pk)$/,
    ([, detector]) =>
      1000 *
      asMotion(asSineDetector(stroke(), detector === 'rms' ? 'rms' : 'peak'), 'velocity', line('exciter/stroke')).value,
  ],
  [
    /^S05\.EXC\.verdict\.(.+)@(stud|magnet-flat)$/,
    ([, name, mount]) =>
      verdict(appraised({ transducer: part('transducers', name!), mount: part('mounts', mount!) }).outcome),
  ],
  [
    /^S05\.EXC\.verdict\.ACC-100W@stud\.PORT-18$/,
    () => verdict(appraised({ input: part('inputs', 'PORT-18') }).outcome),
  ],
  [/^S05\.chain\.need_range_dB$/, () => range().withMargin],
  [/^S05\.chain\.need_g_pk$/, () => range().largest / gravity],
  [/^S05\.chain\.FS_g$/, () => Math.min(...chosen().ceilings.map((each) => known(each).peak)) / gravity],
  [
    /^S05\.chain\.slew_20g$/,
    () => {
      const { capacitance, current } = known(chosen().drive);
      return slewLimit(capacitance, current, 0, 20 * gravity * known(chosen().chain.transducer.sensitivity));
    },
  ],
  [/^S05\.chain\.noise_2k_8k$/, () => known(visibility(exciter.point.targets[2]!, chosen())).noise.value / gravity],
  [/^S05\.chain\.err_8k$/, () => error(8000)],
  [/^S05\.chain\.err_1x$/, () => error(line('exciter/stroke'))],
  [/^S05\.uncertainty\.stroke_circular\.U$/, () => expanded({})],
  [/^S05\.uncertainty\.stroke_linear\.U$/, () => expanded({ crossPhase: stated('in step') })],
  [
    /^S05\.uncertainty\.improved\.U$/,
    () => expanded({ calibration: fraction(0.01), temperatureResidual: fraction(0.005), inputGain: fraction(0.003) }),
  ],
  [/^S05\.acq\.(stroke|env)\.Fmax$/, ([, name]) => set(sets[name!]!).highestFrequency],
  [/^S05\.acq\.(stroke|env)\.lines$/, ([, name]) => set(sets[name!]!).lines],
  [/^S05\.acq\.(stroke|env)\.df$/, ([, name]) => set(sets[name!]!).resolution],
  [/^S05\.acq\.(stroke|env)\.T$/, ([, name]) => set(sets[name!]!).recordLength],
  [/^S05\.acq\.skew_deg_per_ms$/, () => phaseSkew(line('exciter/stroke'), 1e-3)],
  [/^S05\.alarm\.stroke_low_g$/, () => inG(known(exciter.window!.accelerations).alertLow)],
  [/^S05\.alarm\.stroke_high_g$/, () => inG(known(exciter.window!.accelerations).alertHigh)],
  [/^S05\.alarm\.stroke_trip_g$/, () => inG(known(exciter.window!.accelerations).trip)],
];

heldAgainstReference('vibrating-screen', 'S05', answers);

const speaking = (found: Design, rule: string) => found.findings.find((each) => each.rule === rule);

test('the accuracy that was promised is not proven, and the tool does not stay silent about it', () => {
  expect(showMeasure(speaking(designed, 'design/accuracy-not-proven')!.found)).toContain('stroke 1x ±3.95 %');
  expect(designed.verdict).toBe('open questions');
});

test('a worst peak less than 3 dB below the ceiling passes with a warning', () => {
  const warned = designed.findings.filter(({ rule, weight }) => rule === 'chain/overload' && weight === 'warns');
  expect(warned.length).toBeGreaterThan(0);
});

test('the line of the inner ring has no side lines at once per turn and that of the outer ring has them', () => {
  const names = machine.frequencies.rows.map((row) => row.line.name);
  expect(names).toContain('exciter-bearing/outer-ring-lower');
  expect(names).toContain('exciter-bearing/outer-ring-upper');
  expect(names.filter((name) => /inner-ring-(lower|upper)/.test(name))).toEqual([]);
});

const file = readFileSync(resolve(root, 'examples/vibrating-screen/plant.yaml'), 'utf8');
const changed = (before: string, after: string) => {
  if (!file.includes(before)) throw new Error(`the plant file holds no '${before}'`);
  return design(plantOf(file.replace(before, after)), 1);
};

test('bad input: a stroke of 4.5 mm amplitude entered as peak-to-peak: 2.13 g throws nothing', () => {
  const wrong = speaking(changed('value: 9 mm pp', 'value: 4.5 mm pp'), 'machine/throw-plausible')!;
  expect(showMeasure(wrong.found)).toContain('2.13 g');
  expect(showMeasure(wrong.asks ?? '')).toContain('amplitude');
});

test('bad input: 920 r/min is the motor before the belt: the plate of the exciter asks', () => {
  const wrong = changed(
    'speed: { value: 920 r/min, status: measured, source: tachometer at the exciter }',
    'speed: { value: 920 r/min, status: measured, source: tachometer at the motor }\n    plates:\n      exciter: 740 r/min',
  );
  expect(speaking(wrong, 'machine/plate-against-train')!.asks).toContain('Which is right');
});

test('bad input: the load of the exciter bearing left out, or said to stand still, is asked about', () => {
  for (const after of ['', '        load: stands still\n']) {
    const wrong = changed('        load: turns with the inner ring\n', after);
    expect(speaking(wrong, 'machine/load-of-bearing')!.limit).toContain('turns with the inner ring');
  }
});

test('bad input: a severity table does not judge a machine that shakes by design', () => {
  const wrong = changed(
    '    points:\n',
    '    limits:\n      table: iso-20816-3-2022-group-2-rigid-velocity\n    points:\n',
  );
  expect(speaking(wrong, 'design/shakes-by-design')).toMatchObject({ weight: 'blocks-issue' });
});

test('bad input: the modes of the springs keep a record from 1 Hz, below the high-pass of the stroke', () => {
  expect(set('low-modes').from).toBe(1);
  expect(set('motion-path').integration!.corner).toBe(5);
});

test('bad input: a sensor of 120 g stands on the housing, not on a thin side plate', () => {
  const onPlate = changed(
    '          exposure: washed down\n',
    '          exposure: washed down\n          local-mass: 0.5 kg\n',
  );
  expect(speaking(onPlate, 'chain/mass-loading')).toBeDefined();
  expect(speaking(designed, 'chain/mass-loading')).toBeUndefined();
});
